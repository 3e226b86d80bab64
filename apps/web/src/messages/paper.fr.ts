import { FRENCH_NUMBERS } from "@steelyard/core/units";
import type { paperEn } from "./paper.en.ts";
import type { Words } from "./words.ts";

const s = (value: number): string => (FRENCH_NUMBERS.plural(value) === "one" ? "" : "s");

/** The Paper screen in French: machine-translated and reviewed by nobody. */
export const paperFr: Words<typeof paperEn> = {
  intro:
    "Papiers à l’échelle pour un poste sans écran. Imprimez le PDF à 100\u00a0%, mesurez les deux règles de chaque page, et jetez toute page fausse.",
  kind: "Papier",
  kinds: {
    strip: "Bande de longueur",
    "arm-band": "Bracelet de bras",
    grid: "Grille des poids",
    "grid-waist": "Grille avec tour de taille",
    booklet: "Livret de doses",
    child: "Feuille de l’enfant",
    labels: "Étiquettes de seringues",
    guide: "Guide des mesures",
    "reading-test": "Test de lecture",
  },
  page: "Imprimé sur",
  pages: {
    a4: "A4",
    a3: "A3",
    letter: "Lettre US",
    roll: "un rouleau",
    "70x37": "étiquettes de 70 × 37\u00a0mm sur A4",
    "63.5x38.1": "étiquettes de 63,5 × 38,1\u00a0mm sur A4",
    "2.625x1in": "étiquettes de 2⅝ × 1\u00a0in sur Lettre US",
  },
  language: "Langue du papier",
  unreviewed: "Le français est traduit par une machine et relu par personne\u202f; chaque page le dit.",
  classColours: "Couleurs de classe ISO 26825 à côté des mots",
  problems: "Problèmes dessus",
  noProblem: "Choisissez au moins un problème\u00a0: sans cela, aucune dose n’y figure.",
  noChild: "Il n’y a pas d’enfant au chevet\u00a0: saisissez-y longueur et bras, puis revenez.",
  progress: (done, of) => `Poids ${done} sur ${of} dessiné${s(done)}.`,
  cancel: "Annuler",
  cancelled: "Annulé.",
  drawAgain: "Dessiner",
  rollWidth: "Largeur du rouleau",
  rollWidthUnit: "mm",
  site: "Calibrage de votre site",
  siteHint: "le fichier écrit par steelyard calibrate\u202f; sans lui, le papier vaut pour tout site",
  formulary: "Formulaire de votre site",
  formularyHint: "signé, sinon le papier est un projet et le dit en travers de chaque page",
  takeOff: (file) => `Retirer ${file}`,
  drawing: "Dessin en cours.",
  preview: (page, pages) => `Page ${page} sur ${pages}`,
  previousPage: "Page précédente",
  nextPage: "Page suivante",
  download: (pages) => `Télécharger le PDF, ${pages} page${s(pages)}`,
  making: "Création du PDF.",
  made: (file) => `${file} est prêt. Imprimez-le à 100\u00a0%.`,
  notMade: "Le PDF n’a pas pu être créé ici. En ligne de commande\u00a0:",
  typefaceMissing: "La police des papiers n’a pas pu être chargée. Réessayez avec le réseau.",
  rollWidthMissing: "Saisissez la largeur du rouleau en mm, par exemple 297.",
  tooNarrow: (widthMm, leastMm) =>
    `${widthMm}\u00a0mm, c’est trop étroit\u00a0: les lignes ne se distingueraient pas. Il faut ${leastMm}\u00a0mm ou plus.`,
  tooWide: (mostMm) => `Un rouleau a au plus ${mostMm}\u00a0mm de large.`,
  otherModel: (profileModel, currentModel) =>
    `Le calibrage a été fait pour le modèle corporel ${profileModel}, et celui-ci est ${currentModel}\u00a0: calibrez de nouveau.`,
  changedSinceSigned: (name, date) =>
    `Le formulaire a été modifié après sa signature par ${name} le ${date}\u00a0: faites-le relire et signer de nouveau.`,
  notJson: (file) => `${file} n’est pas un fichier de ce type.`,
  faults: (file, count) => `${file} contient ${count} défaut${s(count)}\u202f; rien n’en a été repris.`,
  cannotDraw: "Le papier ne peut pas être dessiné proprement\u00a0:",
  glyphsMissing: (characters, text) => `La police n’a pas ${characters} de «\u202f${text}\u202f».`,
  doesNotFit: (text) => `«\u202f${text}\u202f» ne tient pas à sa place.`,
};
