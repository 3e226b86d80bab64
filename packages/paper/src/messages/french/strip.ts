import type { StripMessages } from "../strip-messages.ts";

export const FRENCH_STRIP: StripMessages = {
  title: "Bande de longueur",
  subtitle: "Le poids d’un enfant d’après la longueur couchée et le bras",
  idealLine: "poids idéal",
  armScale: "bras, mm",
  kilograms: (written) => `${written}\u00a0kg`,
  chartAlt: ({ fromCm, toCm }) =>
    `Lignes d’égal poids total pour des longueurs de ${fromCm} à ${toCm}\u00a0cm selon le périmètre brachial`,
  marginLength: "cm",
  marginIdeal: "idéal kg",
  marginRange: "étendue 95\u00a0%",
  range: ({ below, above }) => `−${below} +${above}\u00a0%`,
  headLine: "LIGNE DE TÊTE\u00a0: le sommet du crâne touche ce bord",
  headEnd: "côté tête",
  footEnd: "CÔTÉ PIEDS",
  section: ({ page, pages, fromCm, toCm }) => `Page ${page} sur ${pages}\u00a0: ${fromCm} à ${toCm}\u00a0cm`,
  cutAndJoin: ({ atCm, page }) =>
    `Couper cette bande le long de la ligne. Poser le bord sur la ligne à ${atCm}\u00a0cm de la page ${page}, croix sur croix, et coller.`,
  glueNext: ({ page }) => `La page ${page} se colle sur ce bout, à partir de la ligne aux croix.`,
  stepsTitle: "Comment lire",
  steps: [
    "Coucher l’enfant à plat sur le dos le long du ruban, sommet du crâne sur la ligne de tête, visage vers le haut. Une personne tient la tête, une autre les genoux.",
    "Étendre les jambes, pied d’équerre. Là où le talon touche le ruban se lit la longueur couchée.",
    "Mesurer le bras nu et relâché à mi-distance entre les pointes de l’épaule et du coude, en mm, ruban posé sans serrer.",
    "Du talon, aller droit jusqu’au bras. La ligne la plus proche est le poids total. La marge donne le poids idéal et l’étendue.",
  ],
  childAlt:
    "Un enfant couché sur le dos le long du ruban, sommet du crâne sur la ligne de tête, talon sur le ruban, un mètre autour du milieu du bras",
  postureTitle: "Posture",
  postures: [
    "Seule la taille debout est connue\u00a0: ajouter 0,7\u00a0cm.",
    "Demi-assis ou assis\u00a0: la longueur est moins sûre (écart type 2 à 3\u00a0cm) et l’étendue plus large que ne dit la marge. Dire comment elle a été prise.",
    "Une personne seule\u00a0: la longueur est moins sûre (écart type 1,5\u00a0cm). La prendre deux fois.",
  ],
  notForTitle: "Pas pour",
  notFor:
    "moins de 45\u00a0cm, les nouveau-nés que l’on peut peser, les adultes\u202f; un bras avec œdème, plâtre, brûlures ou perfusion diffusée. C’est une estimation\u00a0: ne jamais la noter comme un poids mesuré.",
  assemblyTitle: "Assembler",
  assembly: ({ pages, firstJoinCm }) =>
    `Imprimer ${pages} pages à 100\u00a0% et mesurer les deux règles de chacune. Garder la page 1 entière. Dès la page 2, couper la bande du haut, poser le bord sur la ligne au pied de la page d’avant (la première à ${firstJoinCm}\u00a0cm), croix sur croix, et coller. Contrôler le tout au mètre\u00a0: 0 à 200\u00a0cm, à 2\u00a0mm près.`,
  assemblyAlt:
    "Pages posées l’une sur l’autre de la tête aux pieds, chacune sur la bande de colle de la précédente",
  legendTitle: "Sur le graphique",
  legend: {
    contour:
      "Poids total. Chaque ligne a ses kg\u202f; la plus proche est à moins de 2\u00a0% du modèle corporel.",
    arm: "Tour de bras en mm, d’une échelle à l’autre.",
    ideal: "Poids idéal\u00a0: la médiane des enfants sains de cette longueur.",
    beyond:
      "Au-delà de ce que le modèle a vu (bras de 2 enfants sur 1\u202f000\u202f; moins de 50\u00a0cm)\u00a0: ne pas s’y fier, peser.",
    margin:
      "La marge\u00a0: longueur, poids idéal, et de combien 95 enfants sur 100 s’écartent de l’estimation près de la ligne idéale\u202f; plus vers les bords.",
  },
  example: ({ lengthCm, armMm, lineKg, low, high, idealKg }) =>
    `Exemple\u00a0: talon à ${lengthCm}\u00a0cm, bras ${armMm}\u00a0mm. La ligne la plus proche dit ${lineKg}\u00a0kg\u202f; 95 enfants sur 100 pèsent de ${low} à ${high}\u00a0kg\u202f; le poids idéal est ${idealKg}\u00a0kg.`,
};
