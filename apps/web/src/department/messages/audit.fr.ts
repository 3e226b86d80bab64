import type { Words } from "../../messages/words.ts";
import type { auditEn } from "./audit.en.ts";
import { frenchCount, frenchNumber } from "./counted.ts";

export const auditFr: Words<typeof auditEn> = {
  intro:
    "Qui a lu, changé, signé, publié et exporté quoi. Les entrées sont enchaînées\u00a0: chacune contient l’empreinte de la précédente, si bien qu’aucune ne peut être changée ou retirée sans que cela se voie.",
  action: "Acte",
  actionHint: "par exemple case.read",
  actor: "Qui",
  actorHint: "le «\u202fqui\u202f» d’une entrée, comme person:… ou command",
  verifyTitle: "Le journal est-il entier\u202f?",
  verify: "Vérifier tout le journal",
  whole: (count) =>
    `Entier\u00a0: ${frenchCount(count, "entrée, à sa place et inchangée", "entrées, chacune à sa place et inchangée")}.`,
  broken: "Pas entier. Gardez cette page, cessez d’utiliser les dossiers, et cherchez pourquoi.",
  hash: (hash) =>
    `Empreinte de la dernière entrée\u00a0: ${hash}. Gardée ailleurs, elle montre plus tard que rien n’a été réécrit.`,
  fault: {
    gap: "il manque des entrées",
    "broken-chain": "la chaîne est rompue",
    "changed-entry": "une entrée a été changée",
    "wrong-end": "la fin du journal n’est pas où elle devrait être",
    "changed-events": "des événements de cas ont été changés",
    "missing-events": "il manque des événements de cas",
  },
  at: (place) => `à l’entrée ${frenchNumber(place)}`,
  list: "Entrées, la dernière d’abord",
  none: "Aucune entrée trouvée.",
  place: "Nº",
  subject: "Sur",
  older: "Entrées plus anciennes",
  newer: "Entrées plus récentes",
  exportCsv: "Enregistrer en CSV",
  exporting: "Lecture du journal.",
  exported: (file, n) => `${file} contient ${frenchCount(n, "entrée", "entrées")}.`,
  exportCut: (n) =>
    `Le fichier ne contient que ${frenchCount(n, "entrée, la dernière", "entrées, les dernières")}. Filtrez pour atteindre les plus anciennes.`,
};
