import type { GridMessages } from "../grid-messages.ts";

export const FRENCH_GRID: GridMessages = {
  title: "Grille des poids",
  subtitle: "Poids total en kg selon la longueur couchée et le périmètre brachial, sexe inconnu",
  subtitleWithWaist:
    "Poids total en kg selon longueur couchée, périmètre brachial et tour de taille, sexe inconnu",
  range: ({ fromCm, toCm }) => `${fromCm} à ${toCm}\u00a0cm`,
  length: "longueur, cm",
  ideal: "idéal, kg",
  arm: "périmètre brachial, mm",
  waist: "tour de taille, cm",
  alt: "Tableau du poids total en kg",
  key: "Prendre la ligne et la colonne les plus proches. Encadré\u00a0: le plus proche du poids idéal. Gris\u00a0: au-delà de ce que le modèle a vu\u202f; ne pas s’y fier, peser. Vide\u00a0: un tel enfant n’est pas à attendre\u202f; mesurer encore.",
  keyWithWaist:
    "Prendre le bloc de la longueur la plus proche, puis la ligne et la colonne les plus proches. Encadré\u00a0: le plus proche du poids idéal. Gris\u00a0: au-delà de ce que le modèle a vu\u202f; peser. Vide\u00a0: les deux tours se contredisent\u202f; mesurer encore.",
  blockLength: ({ lengthCm }) => `${lengthCm}\u00a0cm`,
  blockIdeal: ({ kg }) => `idéal ${kg}\u00a0kg`,
};
