import type { Words } from "../../messages/words.ts";
import { frenchCount } from "./counted.ts";
import type { registerEn } from "./register.en.ts";

export const registerFr: Words<typeof registerEn> = {
  intro:
    "Ce que les appareils de ce service ont envoyé. Les cas vont par un code et ne portent pas de noms. Chaque liste et chaque cas que vous ouvrez est inscrit au journal d’audit.",
  state: "Horloge",
  states: { all: "en marche ou arrêtée", open: "en marche", closed: "arrêtée" },
  due: "Poids à la balance",
  dues: { all: "avec ou sans", weight: "encore à peser" },
  code: "Code du cas",
  none: "Aucun cas trouvé. Changez les filtres, ou attendez qu’un appareil ait eu le réseau.",
  running: "horloge en marche",
  estimated: (kg, low, high) => `estimé ${kg}, de ${low} à ${high}`,
  notEstimated: "pas d’estimation",
  doses: (n) => frenchCount(n, "dose", "doses"),
  weighed: (kg, on) => `pesé ${kg} le ${on}`,
  off: (percent) => `écart de l’estimation ${percent}`,
  weightDue: "à peser",
  older: "Cas plus anciens",
  newer: "Cas plus récents",
  all: "Tous les cas",
  ran: ({ model, formulary, calibration }) =>
    `Modèle corporel ${model}, formulaire ${formulary}, ${calibration === undefined ? "sans calibrage" : `calibrage ${calibration}`}.`,
  started: (when) => `commencé ${when}`,
  timeline: "Déroulement",
  unsent: (n) =>
    frenchCount(n, "entrée n’est pas encore sur le serveur.", "entrées ne sont pas encore sur le serveur."),
  sendAgain: "Envoyer à nouveau",
  sent: "Sur le serveur.",
  exportIntro:
    "Une ligne pour chaque cas avec une mesure, comme une étude les lit\u00a0: ni noms, ni codes, des jours au lieu de dates. L’export est inscrit au journal d’audit.",
  makeExport: "Faire le fichier",
  made: (file, rows) => `${file} contient ${frenchCount(rows, "cas", "cas")}.`,
  saveFile: "Enregistrer le fichier",
  fewRows: (rows, limit) =>
    `Seulement ${frenchCount(rows, "cas", "cas")}\u00a0: sous ${limit}, un enfant peut être reconnu parce qu’il en fait partie. Prenez une période plus longue, ou convenez d’abord de qui voit le fichier.`,
  earlier: "Il y a des cas plus anciens que le fichier ne contient pas\u00a0: demandez-les par jours.",
  study: "Ouvrez-le à l’écran Étude de la page au chevet, ou avec «\u202fsteelyard study\u202f».",
};
