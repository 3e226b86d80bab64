import { FRENCH_NUMBERS, formatNumber } from "@steelyard/core/units";
import type { casesEn } from "./cases.en.ts";
import type { Words } from "./words.ts";

const plural = (n: number, one: string, other: string): string =>
  `${formatNumber(n, FRENCH_NUMBERS)}\u00a0${FRENCH_NUMBERS.plural(n) === "one" ? one : other}`;

/** The clock, the log and the casebook in French: machine-translated and reviewed by nobody. */
export const casesFr: Words<typeof casesEn> = {
  bar: "Chronomètre et journal",
  start: "Lancer le chronomètre",
  startHint: "tient un journal de cet enfant sur cet appareil",
  clock: "Chronomètre",
  openLog: "Journal",
  closeLog: "Fermer le journal",
  code: (code) => `Cas ${code}`,
  give: (dose) => `Noter ${dose} comme administré`,
  giveStarted: (dose) => `Noter ${dose} comme commencé`,
  givenTimes: (n) => `noté ${plural(n, "fois", "fois")} dans ce cas`,
  marked: (what) => `${what}\u00a0: noté.`,
  undo: "Annuler",
  undoWhat: (what) => `Annuler\u00a0: ${what}`,
  bringBack: "Rétablir",
  bringBackWhat: (what) => `Rétablir\u00a0: ${what}`,
  takenBack: "annulé",
  correct: "Corriger",
  correctWhat: (what) => `Corriger\u00a0: ${what}`,
  correction: "correction",
  due: (due, clock) => {
    switch (due.type) {
      case "in":
        return `due dans ${clock(due.seconds)}`;
      case "now":
        return "due maintenant";
      case "overdue":
        return `en retard de ${clock(due.seconds)}`;
    }
  },
  dueBetween: (from, to) => (from === to ? `à ${from}` : `de ${from} à ${to}`),
  noneDue: "rien à faire",
  doses: (n, total) => `${plural(n, "dose", "doses")}, ${total} en tout`,
  medicineTotal: (total) => `${total} du médicament, tous usages réunis`,
  remaining: (left, hours) =>
    `encore ${left} sous le maximum${hours === undefined ? "" : ` en ${hours}\u00a0h`}`,
  dosesLeft: (n) => (n === 0 ? "plus aucune dose" : `encore ${plural(n, "dose", "doses")}`),
  byFormulary: (name, isSigned) => `formulaire ${name}${isSigned ? "" : " (projet, non signé)"}`,
  otherFormulary: (n, other, now) =>
    `${plural(n, "dose a été notée", "doses ont été notées")} selon le ${other}. Les maximums, totaux et heures ci-dessus suivent celui en usage, ${now}\u00a0: comparez-les à ce qui était prévu.`,
  notTracked: (what) =>
    `${what}\u00a0: le formulaire utilisé n’a pas cette ligne. Ni limite ni dose suivante n’en sont connues ici\u202f; elle compte dans les totaux des autres indications du médicament.`,
  givenTitle: "Administré et à venir",
  nothingGiven:
    "Rien de noté. Ouvrez une ligne de la feuille et notez-la comme administrée, ou notez-la de nouveau ici.",
  logTitle: "Journal",
  noteLabel: "Note",
  noteHint: "sans noms\u202f; 500 caractères au plus",
  addNote: "Ajouter la note",
  whoLabel: "Par qui",
  whoHint: "initiales ou fonction, si voulu\u202f; figure sur ce qui est noté désormais",
  timeLabel: "Heure d’administration",
  amountLabel: (unit) => `Dose en ${unit}`,
  volumeLabel: "Volume en mL",
  saveCorrection: "Remplacer",
  cancel: "Laisser tel quel",
  badAmount: "La dose doit être un nombre supérieur à 0.",
  badVolume: "Le volume doit être un nombre supérieur à 0.",
  stop: "Arrêter le chronomètre",
  runOn: "Reprendre",
  stopped: "Arrêté",
  exportTitle: "Exporter",
  exportText: "Texte",
  exportJson: "JSON",
  exportFhir: "FHIR R4",
  exported: (file) =>
    `${file} est prêt. Il contient des données cliniques\u00a0: rangez-le là où vont de tels fichiers.`,
  keptMemory: {
    refused:
      "Ce navigateur ne garde rien ici\u00a0: le journal ne vit que dans cet onglet et se perd à sa fermeture. Exportez-le avant de partir.",
    full: "L’appareil est plein\u00a0: la dernière saisie ne vit que dans cet onglet. Libérez de la place et réessayez\u202f; exportez le journal avant de partir.",
  },
  tryAgain: "Réessayer",
  locked:
    "Le registre est verrouillé. Ce que vous notez est gardé, scellé\u202f; les saisies antérieures demandent le code.",
  otherTabs:
    "Steelyard est ouvert dans un autre onglet. Les deux écrivent dans le même registre\u202f; chacun a son enfant et son chronomètre.",
  unreadable: (n) =>
    `${plural(n, "entrée de cet appareil est illisible", "entrées de cet appareil sont illisibles")}\u00a0: abîmées, ou d’une version ultérieure. Rien n’a été modifié.`,
  casebook: {
    intro:
      "Cas gardés sur cet appareil\u00a0: aucun nom n’est demandé, et rien n’en sort sans export de votre part.",
    empty:
      "Pas encore de cas. Lancez le chronomètre à l’écran Au chevet, ou notez une dose comme administrée, et le cas est gardé ici.",
    search: "Chercher un cas par code, date, médicament ou note",
    none: "Aucun cas trouvé.",
    count: (n) => plural(n, "cas", "cas"),
    opening: "Ouverture du registre.",
    started: (when) => `commencé ${when}`,
    running: "chronomètre en marche",
    estimated: (kg, low, high) => `${kg} estimés, ${low} à ${high}`,
    doses: (n) => plural(n, "dose", "doses"),
    weighed: (kg, on) => `pesé ${kg} le ${on}`,
    off: (percent) => `écart de l’estimation ${percent}`,
    notWeighed: "pas encore pesé",
    weightDue: (n) => `${plural(n, "cas attend", "cas attendent")} un poids de balance`,
    filterAll: "Tous",
    filterDue: "À peser",
    filterDeleted: "Supprimés",
    filter: "Afficher",
    laterTitle: "Poids de balance, après coup",
    kg: "Poids, balance",
    on: "Pesé le",
    saveWeight: "Garder le poids",
    badKg: "Un poids entre 0,2 et 400\u00a0kg, comme 18,4.",
    badDay: "Un jour ni avant le cas ni après aujourd’hui.",
    unlikely: (kg, low, high) =>
      `${kg} sort de l’intervalle à 95\u00a0%, ${low} à ${high}. Est-ce bien cet enfant, sans vêtements ni perfusions sur la balance\u202f?`,
    keepAnyway: "C’est bien la valeur lue\u202f; la garder",
    delete: "Supprimer le cas",
    deleted: (code) => `Cas ${code} supprimé.`,
    undelete: "Rétablir le cas",
    purge: "Effacer définitivement",
    purgeSure: "Effacer définitivement\u00a0: sans retour possible",
    purged: (code) => `Cas ${code} effacé de cet appareil.`,
    back: "Tous les cas",
    missing: "Ce cas n’est pas sur cet appareil, ou le registre est verrouillé.",
    exportAll: "Exporter",
    exportCsv: "CSV pour l’étude",
    exportCsvHint: "une ligne par cas, des jours au lieu de dates, sans noms",
    exportJsonAll: "Tous les cas, JSON",
    importTitle: "Importer",
    importLabel: "Fichier de cas, JSON ou CSV",
    importHint: "tel qu’exporté ici\u202f; chaque défaut est nommé",
    imported: (events, cases) =>
      `${plural(events, "entrée", "entrées")} de ${plural(cases, "cas", "cas")}\u00a0: reprises. Celles déjà connues n’ont rien changé.`,
    importedNone: "Rien n’a été repris.",
    refusedTitle: (n) => plural(n, "défaut", "défauts"),
    lockTitle: "Code d’accès",
    lockWords:
      "Un code scelle ce qui est gardé\u00a0: qui prend cet appareil ou copie sa mémoire ne peut pas lire les cas sans lui. Noter reste possible sans lui. Il ne protège pas s’il est court, si l’on vous observe, ou si l’appareil est pris déverrouillé. Il n’y a pas d’autre accès\u00a0: un code oublié, ce sont des cas que personne ne peut lire.",
    passcode: "Code d’accès",
    passcodeAgain: "Code d’accès, encore une fois",
    passcodeHint: "8 caractères ou plus\u202f; trois ou quatre mots sont le mieux",
    setPasscode: "Définir le code",
    tooShort: "Prenez 8 caractères ou plus.",
    different: "Les deux ne sont pas identiques.",
    unlock: "Déverrouiller",
    unlocking: "En cours.",
    wrong: "Ce n’est pas le code.",
    lockNow: "Verrouiller maintenant",
    removePasscode: "Retirer le code",
    lockOpen: "Le registre est déverrouillé dans cet onglet jusqu’à sa fermeture.",
  },
  importFaults: {
    empty: "Le fichier est vide.",
    "not-json": (reason) => `Le fichier est abîmé ou n’est pas du JSON\u00a0: ${reason}`,
    "not-a-case-file": "Ce n’est pas un fichier de cas.",
    "later-version":
      "Le fichier vient d’une version plus récente de Steelyard. Mettez d’abord cet appareil à jour.",
    "no-rows": "Le fichier n’a pas de cas.",
    "missing-column": (column) => `La colonne ${column} manque.`,
    "unknown-column": (column) => `Rien n’a été lu de la colonne ${column}.`,
    "not-a-number": (row, column, text) =>
      `Ligne ${row}, ${column}\u00a0: «\u202f${text}\u202f» n’est pas un nombre avec un point décimal.`,
    "unequal-fields": (row, fields, expected) =>
      `La ligne ${row} a ${plural(fields, "champ", "champs")} là où l’en-tête en a ${expected}.`,
    "open-quote": (row) => `La ligne ${row} a un guillemet qui ne se ferme pas.`,
    "faulty-value": (row, column, reason) => `Ligne ${row}, ${column}\u00a0: ${reason}.`,
    event: (place, what) => `Entrée ${place}\u00a0: ${what}.`,
    "not-an-object": "n’est pas une entrée",
    "unknown-format": "est d’un format ultérieur",
    "unknown-event": (event) => `est d’un type inconnu, «\u202f${event}\u202f»`,
    "faulty-part": (path, reason) => `${path} ${reason}`,
    more: (n) => `et ${formatNumber(n, FRENCH_NUMBERS)} de plus`,
  },
};
