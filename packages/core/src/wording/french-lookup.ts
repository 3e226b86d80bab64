import type { LookupQuantity, LookupRest, LookupStep, LookupUnit, LookupValue } from "../lookup/index.ts";
import * as units from "../units/index.ts";
import { FRENCH_VALUES } from "./french-values.ts";
import type { LookupCatalogue } from "./lookup-catalogue.ts";
import * as ages from "./write-age.ts";
import * as edge from "./write-edges.ts";
import * as lookup from "./write-lookup.ts";

const PER_MINUTE = "par\u00a0minute";

const QUANTITY: Readonly<Record<LookupQuantity, string>> = {
  age: "âge",
  length: "longueur",
  "total-weight": "poids total",
  "ideal-weight": "poids idéal",
  arm: "périmètre brachial",
  tube: "la sonde",
};

const REST: Readonly<Record<LookupRest, string>> = {
  age: "âge",
  "height-age": "âge statural",
  length: "longueur",
  "total-weight": "poids total",
  "ideal-weight": "poids idéal",
  arm: "périmètre brachial",
};

const BOUND = { "at-least": "au moins ", "at-most": "au plus " } as const;

const number = (value: number): string => units.formatNumber(value, FRENCH_VALUES.numbers);
const kilograms = (kg: number): string => units.formatWeight(kg, FRENCH_VALUES.numbers);
const writeAge = (months: number): string => ages.writeAge(months, FRENCH_VALUES);
const quantity = (by: LookupQuantity, value: number): string =>
  lookup.writeQuantity(by, value, FRENCH_VALUES);

function exact(value: LookupValue, unit: LookupUnit): string {
  return lookup.writeLookupValue({ value, unit, perMinute: PER_MINUTE }, FRENCH_VALUES);
}

function size(value: number, unit: LookupUnit): string {
  return unit === "mm" ? lookup.writeTubeMm(value, FRENCH_VALUES) : exact(value, unit);
}

function edges(by: LookupQuantity, low: number | undefined, high: number | undefined): string {
  return edge.writeEdges((value) => quantity(by, value), low, high, FRENCH_VALUES);
}

/** "âge 4 ans ÷ 4 + 3,5": what is done to the number, in order. */
function sum({ by, value, times, over, plus }: Extract<LookupStep, { step: "linear" }>): string {
  const years = FRENCH_VALUES.age.year[FRENCH_VALUES.numbers.plural(value)];
  const start = by === "age" ? `${number(value)}\u00a0${years}` : quantity(by, value);
  const factor = times === undefined ? "" : ` × ${number(times)}`;
  const divisor = over === undefined ? "" : ` ÷ ${number(over)}`;
  const addend = plus === undefined ? "" : ` + ${number(plus)}`;
  return `${QUANTITY[by]} ${start}${factor}${divisor}${addend}`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Machine-translated and reviewed by nobody; `FRENCH_LANGUAGE` says so to the reader. */
export const FRENCH_LOOKUP: LookupCatalogue = {
  equipmentBlock: {
    title: "Matériel",
    lines: [
      "Tailles de départ, d’après des règles publiées que personne ici n’a signées. Regardez l’enfant, et tenez prêtes les tailles voisines.",
    ],
  },
  signsBlock: {
    title: "Constantes normales",
    lines: [
      "Valeurs publiées d’enfants sains au repos, que personne ici n’a signées. Un enfant malade se juge dans son ensemble.",
    ],
  },
  item: {
    "tracheal-tube": "Sonde d’intubation",
    "tracheal-tube-depth": "Repère de la sonde d’intubation",
    "laryngoscope-blade": "Lame de laryngoscope",
    "supraglottic-airway": "Dispositif supraglottique",
    "oropharyngeal-airway": "Canule oropharyngée",
    "nasopharyngeal-airway": "Canule nasopharyngée",
    mask: "Masque facial",
    bag: "Insufflateur manuel",
    "tidal-volume": "Volume courant",
    "ventilation-rate": "Fréquence de ventilation",
    "suction-catheter": "Sonde d’aspiration",
    "gastric-tube": "Sonde gastrique",
    "chest-drain": "Drain thoracique",
    "urinary-catheter": "Sonde urinaire",
    cannula: "Cathéter veineux court",
    "intraosseous-needle": "Aiguille intra-osseuse",
    "blood-pressure-cuff": "Brassard à tension",
    "defibrillator-pads": "Électrodes de défibrillation",
  },
  kind: {
    cuffed: "à ballonnet",
    uncuffed: "sans ballonnet",
    oral: "orale, aux lèvres",
    nasal: "nasale, à la narine",
    "mask-type": "masque de première génération",
    "gel-type": "gel de deuxième génération",
    ventilator: "respirateur, au départ",
    "during-compressions": "sonde en place, pendant les compressions",
  },
  word: {
    "round-mask": "rond",
    "shaped-mask": "de forme anatomique",
    "child-pads": "enfant",
    "adult-pads": "adulte",
    "incisors-to-jaw-angle": "des incisives à l’angle de la mâchoire",
    "nostril-to-tragus": "de la narine au tragus",
  },
  note: {
    "cuff-pressure": "Mesurez la pression du ballonnet et gardez-la à 20 à 25\u00a0cmH₂O ou moins.",
    "confirm-position":
      "Un repère n’est qu’un point de départ\u00a0: confirmez par capnographie, auscultation des deux côtés et radiographie.",
    "check-tissue-depth":
      "Choisissez selon l’épaisseur des tissus au point de ponction\u202f; plus de tissus demandent l’aiguille plus longue.",
    "intraosseous-site": "Perceuse motorisée\u202f; tibia proximal, 2\u00a0cm sous la tubérosité.",
    "pads-apart":
      "Bords à 2,5\u00a0cm au moins l’un de l’autre\u202f; devant et derrière le thorax s’ils devaient se toucher. Sans électrodes pour enfant, prenez celles pour adulte.",
    "see-chest-rise": "Juste quand le thorax se soulève à peine.",
    "end-expiratory-pressure":
      "Commencez avec une pression expiratoire positive de 5\u00a0cmH₂O\u202f; ajustez à l’effet.",
    "device-label-first": "L’intervalle de poids imprimé sur le dispositif prime.",
  },
  shape: { straight: "droite", curved: "courbe" },
  sign: {
    "heart-rate": "Fréquence cardiaque",
    "respiratory-rate": "Fréquence respiratoire",
    "systolic-pressure": "Pression systolique",
    "mean-pressure": "Pression artérielle moyenne",
    "blood-volume": "Volume sanguin",
    "urine-output": "Diurèse, au moins",
  },
  signKind: { "lower-limit": "limite basse", "fifth-centile": "5e percentile", median: "médiane" },
  rest: REST,
  because: {
    "age-known": "L’âge est connu\u00a0: la règle selon l’âge vient en premier.",
    "length-measured":
      "La longueur est mesurée et convient aussi aux enfants petits ou grands\u00a0: sa règle vient en premier.",
    "length-before-height-age":
      "L’âge n’est pas connu\u00a0: la règle selon la longueur vient avant celles selon l’âge statural.",
    "under-4-kg": "Sous 4\u00a0kg, la règle du nouveau-né vient en premier.",
  },
  perMinute: PER_MINUTE,
  values: FRENCH_VALUES,
  and: " et ",
  bladder: ({ width, lengthCm }) => `largeur ${width}, longueur ${number(lengthCm)}\u00a0cm`,
  rule: sum,
  step: {
    "height-age": ({ lengthCm, ageMonths, bound }) =>
      `Âge statural\u00a0: l’enfant médian de ${number(lengthCm)}\u00a0cm a ${bound ? BOUND[bound] : ""}${writeAge(ageMonths)}.`,
    linear: (step) => `${capital(sum(step))} = ${exact(step.result, step.unit)}.`,
    band: ({ by, value, low, high }) =>
      `${capital(QUANTITY[by])} ${quantity(by, value)}\u00a0: tranche ${edges(by, low, high)}.`,
    held: ({ by, value, at }) =>
      `${capital(QUANTITY[by])} ${quantity(by, value)}\u00a0: au-delà de la règle, qui s’arrête à ${quantity(by, at)} et dont la valeur est gardée.`,
    size: ({ exact: from, to, result, unit }) =>
      to === "nearest"
        ? `${exact(from, unit)}\u00a0: la taille la plus proche est ${size(result, unit)}.`
        : `${exact(from, unit)}\u00a0: la taille juste en dessous est ${size(result, unit)}.`,
    "per-kg": ({ perKg, by, kg, result, unit }) =>
      `${lookup.writeSpan(perKg, FRENCH_VALUES)}\u00a0${unit === "mL/h" ? "mL/kg/h" : `${unit}/kg`} × ${kilograms(kg)} (${QUANTITY[by]}) = ${exact(result, unit)}.`,
    "share-of-arm": ({ percent, armMm, result }) =>
      `${number(percent)}\u00a0% du périmètre brachial, ${number(armMm)}\u00a0mm, font ${number(result)}\u00a0cm.`,
    chosen: ({ because }) => FRENCH_LOOKUP.because[because],
  },
  warning: {
    "height-age": ({ lengthCm, ageMonths, bound }) =>
      `Âge inconnu\u00a0: selon l’âge statural, ${bound ? BOUND[bound] : ""}${writeAge(ageMonths)}, l’âge auquel l’enfant médian mesure ${number(lengthCm)}\u00a0cm.`,
    "rules-differ": ({ low, high, unit }) =>
      `Les règles publiées diffèrent pour cet enfant\u00a0: ${size(low, unit)} à ${size(high, unit)}.`,
    held: ({ by, at }) => `Au-delà de la règle (${quantity(by, at)})\u00a0: sa dernière valeur est affichée.`,
    newborn: () => "Moins de 28\u00a0jours\u00a0: une sonde sans ballonnet est habituelle.",
    "deep-in-infants": () =>
      "Chez le petit nourrisson, ce repère peut amener l’extrémité près de la carène\u00a0: auscultez les deux côtés.",
    "bladder-misfit": ({ reads, percentOfArm }) =>
      `La poche la plus proche a une largeur de ${number(percentOfArm)}\u00a0% du périmètre brachial, et non de 40\u00a0%\u00a0: la pression lue est trop ${reads === "high" ? "haute" : "basse"}.`,
    "below-fifth-centile": () =>
      "À partir de 12\u00a0ans, cette limite est sous le 5e percentile des enfants sains.",
    "lighter-weight-used": ({ totalKg, idealKg }) =>
      `Calculé selon le poids idéal, ${kilograms(idealKg)}, car le poids total, ${kilograms(totalKg)}, le dépasse de plus de 20\u00a0%.`,
  },
  gap: {
    needs: ({ oneOf }) => `Il faut\u00a0: ${oneOf.map((rest) => REST[rest]).join(" ou ")}.`,
    "outside-rule": ({ by, value, low, high }) =>
      `${capital(QUANTITY[by])} ${quantity(by, value)}\u00a0: hors de la règle (${edges(by, low, high)}).`,
  },
};
