import type { GuideMessages } from "../guide-messages.ts";

export const FRENCH_GUIDE: GuideMessages = {
  title: "Guide des mesures",
  subtitle: "La longueur couchée et le bras d’abord\u202f; chaque mesure de plus resserre l’étendue",
  techniques: {
    "lying-two": {
      title: "Longueur, à deux",
      text: "Sur le dos, jambes droites. L’un tient la tête, regard au plafond\u202f; l’autre appuie sur les genoux, pieds debout. Du sommet du crâne au talon, pas aux orteils.",
    },
    "lying-one": {
      title: "Longueur, seul",
      text: "Sommet du crâne contre un appui droit, le mètre à partir de là. Appuyer sur les genoux, pieds debout, et lire au talon. Moins exact\u00a0: mesurer deux fois.",
    },
    "half-sitting": {
      title: "Longueur, demi-assis",
      text: "Le mètre le long du dos, du sommet du crâne au siège, puis le long de la jambe au talon. Jambes droites. Dire que c’était demi-assis.",
    },
    seated: {
      title: "Longueur, assis",
      text: "Du sommet du crâne au siège, le long de la cuisse au genou, puis au talon. Le moins exact\u00a0: coucher l’enfant dès que possible.",
    },
    "longer-than-tape": {
      title: "Plus long que le mètre",
      text: "Marquer où finit le mètre, le déplacer là, et additionner les deux parties.",
    },
    arm: {
      title: "Bras",
      text: "Bras nu. Trouver le milieu entre la pointe de l’épaule et la pointe du coude plié, puis laisser pendre le bras. Mètre autour du milieu\u00a0: posé, sans creuser la peau. En millimètres.",
    },
    waist: {
      title: "Tour de taille",
      text: "À mi-distance de la dernière côte et du haut de l’os de la hanche, sur la peau. Mètre à plat, en fin d’expiration calme.",
    },
    thigh: {
      title: "Cuisse",
      text: "À mi-distance du pli de l’aine et du haut de la rotule, d’équerre à la jambe.",
    },
    calf: {
      title: "Mollet",
      text: "Autour du mollet au plus large, muscle relâché. Essayer un peu plus haut et plus bas\u00a0: le plus grand compte.",
    },
    head: {
      title: "Tête",
      text: "Juste au-dessus des sourcils, autour de l’arrière là où la tête est la plus large. Mètre ferme, cheveux aplatis.",
    },
    "knee-height": {
      title: "Hauteur du genou",
      text: "Quand les jambes ne s’étendent pas\u00a0: genou et cheville pliés d’équerre, du dessous du talon au haut de la cuisse juste au-dessus de la rotule.",
    },
    "forearm-bone": {
      title: "Os de l’avant-bras",
      text: "Quand aucune longueur n’est possible\u00a0: coude plié, de la pointe du coude à l’os du poignet du côté du petit doigt. Il faut l’âge.",
    },
  },
};
