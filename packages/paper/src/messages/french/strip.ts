import type { StripMessages } from "../strip-messages.ts";

export const FRENCH_STRIP: StripMessages = {
  title: "Bande de longueur",
  subtitle: "Le poids d’un enfant d’après la taille couchée et le bras",
  idealLine: "poids idéal",
  armScale: "bras, mm",
  kilograms: (written) => `${written}\u00a0kg`,
  chartAlt: ({ fromCm, toCm }) =>
    `Lignes d’égal poids total pour des tailles de ${fromCm} à ${toCm} cm selon le tour de bras`,
  marginLength: "cm",
  marginIdeal: "idéal kg",
  marginRange: "étendue 95 %",
  range: ({ below, above }) => `−${below} +${above}\u00a0%`,
  headLine: "LIGNE DE TÊTE : le sommet du crâne touche ce bord",
  headEnd: "côté tête",
  footEnd: "CÔTÉ PIEDS",
  section: ({ page, pages, fromCm, toCm }) => `Page ${page} sur ${pages} : ${fromCm} à ${toCm} cm`,
  cutAndJoin: ({ atCm, page }) =>
    `Couper cette bande le long de la ligne. Poser le bord sur la ligne à ${atCm} cm de la page ${page}, croix sur croix, et coller.`,
  glueNext: ({ page }) => `La page ${page} se colle sur ce bout, à partir de la ligne aux croix.`,
  stepsTitle: "Comment lire",
  steps: [
    "Coucher l’enfant à plat sur le dos le long du ruban, sommet du crâne sur la ligne de tête, visage vers le haut. Une personne tient la tête, une autre les genoux.",
    "Étendre les jambes, pied d’équerre. Là où le talon touche le ruban se lit la taille.",
    "Mesurer le bras nu et relâché à mi-distance entre les pointes de l’épaule et du coude, en mm, ruban posé sans serrer.",
    "Du talon, aller droit jusqu’au bras. La ligne la plus proche est le poids total. La marge donne le poids idéal et l’étendue.",
  ],
  childAlt:
    "Un enfant couché sur le dos le long du ruban, sommet du crâne sur la ligne de tête, talon sur le ruban, un mètre autour du milieu du bras",
  postureTitle: "Posture",
  postures: [
    "Seule la taille debout est connue : ajouter 0.7 cm.",
    "Demi-assis ou assis : la taille est moins sûre (écart type 2 à 3 cm) et l’étendue plus large que ne dit la marge. Dire comment elle a été prise.",
    "Une personne seule : la taille est moins sûre (écart type 1.5 cm). La prendre deux fois.",
  ],
  notForTitle: "Pas pour",
  notFor:
    "moins de 45 cm, les nouveau-nés que l’on peut peser, les adultes ; un bras avec œdème, plâtre, brûlures ou perfusion diffusée. C’est une estimation : ne jamais la noter comme un poids mesuré.",
  assemblyTitle: "Assembler",
  assembly: ({ pages, firstJoinCm }) =>
    `Imprimer ${pages} pages à 100 % et mesurer les deux règles de chacune. Garder la page 1 entière. Dès la page 2, couper la bande du haut, poser le bord sur la ligne au pied de la page d’avant (la première à ${firstJoinCm} cm), croix sur croix, et coller. Contrôler le tout au mètre : 0 à 200 cm, à 2 mm près.`,
  assemblyAlt:
    "Pages posées l’une sur l’autre de la tête aux pieds, chacune sur la bande de colle de la précédente",
  legendTitle: "Sur le graphique",
  legend: {
    contour: "Poids total. Chaque ligne a ses kg ; la plus proche est à moins de 2 % du modèle corporel.",
    arm: "Tour de bras en mm, d’une échelle à l’autre.",
    ideal: "Poids idéal : la médiane des enfants sains de cette taille.",
    beyond:
      "Au-delà de ce que le modèle a vu (bras de 2 enfants sur 1000 ; moins de 50 cm) : ne pas s’y fier, peser.",
    margin:
      "La marge : taille, poids idéal, et de combien 95 enfants sur 100 s’écartent de l’estimation près de la ligne idéale ; plus vers les bords.",
  },
  example: ({ lengthCm, armMm, lineKg, low, high, idealKg }) =>
    `Exemple : talon à ${lengthCm} cm, bras ${armMm} mm. La ligne la plus proche dit ${lineKg} kg ; 95 enfants sur 100 pèsent de ${low} à ${high} kg ; le poids idéal est ${idealKg} kg.`,
};
