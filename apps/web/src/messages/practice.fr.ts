import { FRENCH_NUMBERS, formatNumber } from "@steelyard/core/units";
import type { practiceEn } from "./practice.en.ts";
import type { Words } from "./words.ts";

const plural = (n: number, one: string, other: string): string =>
  `${formatNumber(n, FRENCH_NUMBERS)}\u00a0${FRENCH_NUMBERS.plural(n) === "one" ? one : other}`;

/** The Practice screen in French: machine-translated and reviewed by nobody. */
export const practiceFr: Words<typeof practiceEn> = {
  mark: "Entraînement. Cet enfant est inventé\u202f; rien ici n’est conservé ni administré.",
  intro:
    "Vingt enfants inventés, chacun avec un ruban le long du corps et un autour du bras. Lisez les deux comme au lit du malade\u202f; vous voyez aussitôt votre erreur, son effet sur le poids et le temps que cela a pris.",
  start: "Commencer par le premier enfant",
  child: (n, of) => `Enfant ${n} sur ${of}`,
  postures: { lying: "couché", "half-sitting": "demi-assis", seated: "assis" },
  ages: {
    m: "garçon",
    f: "fille",
    months: (n) => `${n}\u00a0mois`,
    years: (n) => plural(n, "an", "ans"),
  },
  crown: "Ruban au sommet du crâne",
  crownAlt: "Dessin\u00a0: un ruban en centimètres, et où le sommet du crâne le touche. À lire à l’œil.",
  heel: "Ruban au talon",
  heelAlt: "Dessin\u00a0: un ruban en centimètres, et où le talon le touche. À lire à l’œil.",
  arm: "Ruban autour du bras",
  armAlt: "Dessin\u00a0: un ruban en millimètres autour du bras, avec son index. À lire à l’œil.",
  offset: "Le ruban ne commence pas au sommet du crâne.",
  length: "Longueur",
  armLabel: "Bras, à mi-hauteur",
  check: "Vérifier",
  unread: "Tapez une longueur en cm et un bras en mm.",
  result: "Votre lecture",
  yours: "lu",
  drawn: "dessiné",
  error: "erreur",
  weight: "Poids d’après les deux",
  time: (seconds) => `${seconds}\u00a0s du dessin à la vérification.`,
  good: "Aussi proche que deux lectures soigneuses d’une même personne.",
  off: {
    lengthCm: (limit) =>
      `La longueur s’écarte de plus que deux lectures soigneuses (${limit}\u00a0cm)\u00a0: regardez où le ruban commence et où est le talon.`,
    armMm: (limit) =>
      `Le bras s’écarte de plus que deux lectures soigneuses (${limit}\u00a0mm)\u00a0: lisez à l’index, trait par trait.`,
  },
  tens: "Dix de trop ou de moins\u00a0: un nombre pris pour un autre, ou un début qui n’est pas à zéro.",
  next: "Enfant suivant",
  finish: "Voir le bilan",
  again: "Reprendre au premier enfant",
  summary: (n) => plural(n, "enfant lu", "enfants lus"),
  median: "Médiane",
  largest: "Maximum",
  within: (n, of) => `${n} sur ${of} avec les deux lectures dans les limites.`,
  seconds: "temps, s",
  noWeight: "pas de poids",
};
