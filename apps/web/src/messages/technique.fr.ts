import type { techniqueEn } from "./technique.en.ts";
import type { Words } from "./words.ts";

/** How measurements are taken, in French: machine-translated and reviewed by nobody. */
export const techniqueFr: Words<typeof techniqueEn> = {
  title: (name) => `Comment mesurer\u00a0: ${name}`,
  close: "Fermer",
  steps: {
    "lying-two": [
      "Enfant sur le dos, jambes tendues\u202f; ruban sur le lit à côté de l’enfant.",
      "L’un tient la tête, regard au plafond. L’autre appuie sur les genoux, pieds à la verticale.",
      "Du sommet du crâne au talon, non aux orteils.",
    ],
    "lying-one": [
      "Sommet du crâne contre un appui vertical, ruban à partir de là.",
      "Appuyez sur les genoux, pieds à la verticale. Lisez au talon, non aux orteils.",
      "Seul, c’est moins exact\u00a0: l’intervalle s’élargit de lui-même.",
    ],
    "half-sitting": [
      "Ruban le long du dos, du sommet du crâne au siège, puis le long de la jambe jusqu’au talon.",
      "Gardez les jambes tendues\u202f; le ruban suit la pliure.",
    ],
    seated: [
      "Ruban du sommet du crâne le long du dos jusqu’au siège, le long de la cuisse jusqu’au genou, puis jusqu’au talon.",
      "La façon la moins exacte\u00a0: couchez l’enfant dès que possible.",
    ],
    "longer-than-tape": [
      "Plus long que le ruban\u00a0: marquez où il s’arrête, reposez-le là, et saisissez les deux parties avec un plus.",
      "Ne peut être allongé\u00a0: mesurez plutôt un segment du corps, sous Plus.",
    ],
    arm: [
      "Bras nu. Trouvez le milieu entre la pointe de l’épaule et la pointe du coude plié.",
      "Laissez pendre le bras. Ruban autour du milieu\u00a0: au contact, sans marquer la peau.",
      "Lisez en millimètres.",
    ],
    waist: [
      "À mi-distance entre la dernière côte et le haut de l’os iliaque, sur la peau.",
      "Ruban horizontal tout autour, à la fin d’une expiration calme.",
    ],
    thigh: [
      "À mi-distance entre le pli de l’aine et le haut de la rotule.",
      "Ruban perpendiculaire à la cuisse.",
    ],
    calf: [
      "Autour du mollet au plus large, muscle relâché.",
      "Essayez un peu plus haut et plus bas\u00a0: la plus grande valeur compte.",
    ],
    head: [
      "Juste au-dessus des sourcils, autour de l’arrière de la tête au plus large.",
      "Ruban ferme, cheveux aplatis.",
    ],
    "knee-height": [
      "Genou et cheville pliés à angle droit.",
      "Du dessous du talon au dessus de la cuisse, juste au-dessus de la rotule.",
    ],
    "forearm-bone": [
      "Coude plié, main à plat sur l’autre épaule ou sur le lit.",
      "De la pointe du coude à l’os du poignet du côté du petit doigt.",
    ],
  },
};
