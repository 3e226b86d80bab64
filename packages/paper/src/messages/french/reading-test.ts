import type { ReadingTestMessages } from "../reading-test-messages.ts";

export const FRENCH_READING_TEST: ReadingTestMessages = {
  title: "Test de lecture",
  subtitle: "Dix enfants inventés\u00a0: lire leurs poids sur la bande de longueur",
  answersTitle: "Test de lecture, réponses",
  answersSubtitle: "Garder cette page à part jusqu’à la fin du test",
  how: "La bande assemblée devant soi, trouver chaque longueur, aller droit jusqu’au bras et noter la ligne la plus proche. Prendre le poids idéal dans la marge.",
  child: ({ number }) => `Enfant ${number}`,
  length: ({ cm }) => `longueur couchée ${cm}\u00a0cm`,
  arm: ({ mm }) => `bras ${mm}\u00a0mm`,
  total: "poids total, kg",
  ideal: "poids idéal, kg",
  reader: "Lu par",
  date: "Date",
  columns: {
    child: "enfant",
    length: "longueur, cm",
    arm: "bras, mm",
    line: "ligne proche, kg",
    right: "juste aussi, kg",
    ideal: "idéal, kg",
    range: "étendue 95\u00a0%, kg",
  },
  between: "\u202f; ",
  marking:
    "Juste\u00a0: la ligne la plus proche, ou ce qui est dit juste aussi (à moins de 4\u00a0% du modèle corporel). Poids idéal\u00a0: à moins de 3\u00a0%. Qui en manque plus d’un sur dix relit le ruban avec quelqu’un qui n’en manque pas (usage courant, pas un seuil publié).",
  childAlt: "Un enfant couché sur le dos, le mètre autour du milieu du bras",
};
