import type { GridMessages } from "../grid-messages.ts";

export const FRENCH_GRID: GridMessages = {
  title: "Grille des poids",
  subtitle: "Poids total en kg selon la taille couchée et le tour de bras, sexe inconnu",
  subtitleWithWaist:
    "Poids total en kg selon la taille couchée, le tour de bras et le tour de taille, sexe inconnu",
  range: ({ fromCm, toCm }) => `${fromCm} à ${toCm}\u00a0cm`,
  length: "taille, cm",
  ideal: "idéal, kg",
  arm: "tour de bras, mm",
  waist: "tour de taille, cm",
  alt: "Tableau du poids total en kg",
  key: "Prendre la ligne et la colonne les plus proches. Encadré\u00a0: le plus proche du poids idéal. Gris\u00a0: au-delà de ce que le modèle a vu\u202f; ne pas s’y fier, peser. Vide\u00a0: un tel enfant n’est pas à attendre\u202f; mesurer encore.",
  keyWithWaist:
    "Prendre le bloc de la taille la plus proche, puis la ligne et la colonne les plus proches. Encadré\u00a0: le plus proche du poids idéal. Gris\u00a0: au-delà de ce que le modèle a vu\u202f; peser. Vide\u00a0: les deux tours se contredisent\u202f; mesurer encore.",
  blockLength: ({ lengthCm }) => `${lengthCm}\u00a0cm`,
  blockIdeal: ({ kg }) => `idéal ${kg}\u00a0kg`,
};
