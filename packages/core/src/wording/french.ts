import type { MissingLimb, SlipChange, SlipUnit } from "../body/index.ts";
import type { ProblemId } from "../dosing/index.ts";
import { FIELD_UNIT, isAge, type QuantityField, type UnitSymbol } from "../entry/index.ts";
import { FRENCH_EXAMPLE, FRENCH_FIELD } from "./french-names.ts";
import { FRENCH_VALUES } from "./french-values.ts";
import type { FieldName, MessageCatalogue } from "./message-catalogue.ts";
import * as write from "./write-value.ts";

const LIMB: Readonly<Record<MissingLimb, string>> = {
  hand: "la main manquante",
  forearm: "l’avant-bras et la main manquants",
  arm: "le bras manquant",
  foot: "le pied manquant",
  "lower-leg": "la jambe et le pied manquants",
  leg: "le membre inférieur manquant",
};

const UNIT: Readonly<Record<UnitSymbol, string>> = {
  mm: "mm",
  cm: "cm",
  m: "m",
  in: "pouces",
  ft: "pieds",
  g: "g",
  kg: "kg",
  oz: "onces",
  lb: "livres",
  d: "jours",
  w: "semaines",
  mo: "mois",
  y: "ans",
};

const UNIT_IN_FULL: Readonly<Record<SlipUnit, string>> = {
  mm: "millimètres",
  cm: "centimètres",
  m: "mètres",
  in: "pouces",
  ft: "pieds",
  g: "grammes",
  lb: "livres",
  mo: "mois",
  y: "années",
};

const PROBLEM: Readonly<Record<ProblemId, string>> = {
  arrest: "Arrêt cardiaque",
  airway: "Voies aériennes",
  seizure: "Convulsions",
  shock: "Choc",
  anaphylaxis: "Anaphylaxie",
  infection: "Infection",
  bleeding: "Hémorragie",
  "salts-and-sugar": "Électrolytes et glycémie",
  breathing: "Respiration",
  pain: "Douleur et sédation",
  brain: "Hypertension intracrânienne",
  fluids: "Solutés",
  poisoning: "Intoxications et antidotes",
};

/** Machine-translated and reviewed by nobody; `FRENCH_LANGUAGE` says so to the reader. */
export const FRENCH: MessageCatalogue = {
  "field.name": ({ field }) => FRENCH_FIELD[field].name,
  "problem.name": ({ problem }) => PROBLEM[problem],
  "unit.name": ({ unit }) => UNIT[unit],

  "entry-issue.empty": ({ field }) => `${capital(FRENCH_FIELD[field].the)} n’a pas été saisi${e(field)}.`,
  "entry-issue.not-a-number": ({ field, text }) =>
    `${quote(text)} n’est pas un nombre\u00a0: saisissez ${FRENCH_EXAMPLE[field]}.`,
  "entry-issue.several-numbers": ({ field, text }) =>
    `${quote(text)} contient plusieurs nombres\u00a0: saisissez un seul nombre, ${FRENCH_EXAMPLE[field]}.`,
  "entry-issue.ambiguous-separator": ({ field, text }) =>
    `${quote(text)} peut se lire de deux façons, la virgule marquant les décimales ou les milliers\u00a0: saisissez ${FRENCH_EXAMPLE[field]}, avec une ou deux décimales au plus.`,
  "entry-issue.unit-missing": ({ field, text }) =>
    `${capital(FRENCH_FIELD[field].the)} ${quote(text)} n’a pas d’unité\u00a0: saisissez ${FRENCH_EXAMPLE[field]}.`,
  "entry-issue.unit-unknown": ({ field, unit, accepted }) =>
    `${quote(unit)} n’est pas une unité pour ${FRENCH_FIELD[field].the}\u00a0: utilisez ${list(accepted, "ou")}.`,
  "entry-issue.not-positive": ({ field, value }) =>
    isAge(field)
      ? `${capital(FRENCH_FIELD[field].the)} ne peut pas être négatif\u00a0: ${writeAge(value)} a été saisi.`
      : `${capital(FRENCH_FIELD[field].the)} doit dépasser 0\u00a0${FIELD_UNIT[field]}\u00a0: ${measurement(field, value)} a été saisi.`,
  "entry-issue.out-of-limits": ({ field, value, low, high }) =>
    isAge(field)
      ? `${capital(FRENCH_FIELD[field].the)}, ${writeAge(value)}, sort du domaine de cet outil\u00a0: de la naissance à ${writeAge(high)}.`
      : `${capital(FRENCH_FIELD[field].name)} de ${measurement(field, value)} impossible\u00a0: chez tout enfant, la valeur se situe dans l’intervalle ${range(field, low, high)}.`,
  "entry-issue.not-a-choice": ({ field, text, choices }) =>
    choices.includes("yes")
      ? `${quote(text)} ne dit pas s’il y a ${FRENCH_FIELD[field].isFeminine ? "une" : "un"} ${FRENCH_FIELD[field].name}\u00a0: utilisez ${list(choices, "ou")}.`
      : `${quote(text)} ne convient pas pour ${FRENCH_FIELD[field].the}\u00a0: utilisez ${list(choices, "ou")}.`,
  "entry-issue.fields-swapped": ({ lengthCm, armMm }) =>
    `Une longueur de ${measurement("lengthCm", lengthCm)} et un périmètre brachial de ${measurement("armMm", armMm)} ne peuvent pas être justes ensemble\u00a0: aucun enfant n’a un bras aussi mince. Les deux ont peut-être été intervertis.`,

  "entry-notice.unit-converted": ({ field, text, value }) =>
    `${capital(FRENCH_FIELD[field].name)} ${quote(text)}\u00a0: lu comme ${measurement(field, value)}.`,
  "entry-notice.length-from-height": ({ standingHeightCm, lengthCm }) =>
    `Longueur couchée prise comme ${measurement("lengthCm", lengthCm)}\u00a0: taille debout ${measurement("lengthCm", standingHeightCm)} + 0,7\u00a0cm.`,
  "entry-notice.lengths-disagree": ({ lengthCm, standingHeightCm, differenceCm }) =>
    `La longueur couchée ${measurement("lengthCm", lengthCm)} et la taille debout ${measurement("lengthCm", standingHeightCm)} diffèrent de ${measurement("lengthCm", differenceCm)} après ajout de 0,7\u00a0cm à la taille\u202f; la longueur couchée a été retenue.`,
  "entry-notice.earlier-incomplete": ({ field, missing }) =>
    `${capital(FRENCH_FIELD[field].the)} a été saisi${e(field)} mais n’est pas utilisé${e(field)}, car il manque ${FRENCH_FIELD[missing].the}.`,

  "did-you-mean": ({ proposals }) => `Vouliez-vous dire ${list(proposals, "ou")}\u202f?`,
  "proposal.unit": ({ field, typed, from, value }) =>
    isAge(field) || from === FIELD_UNIT[field]
      ? `${number(typed)}\u00a0${unitFor(typed, from)}`
      : `${number(typed)}\u00a0${unitFor(typed, from)} (${measurement(field, value)})`,
  "proposal.swap": ({ lengthCm, armMm }) =>
    `longueur couchée ${measurement("lengthCm", lengthCm)} et périmètre brachial ${measurement("armMm", armMm)}`,
  "proposal.values": ({ values }) =>
    list(
      values.map((value) => namedValue(value)),
      "et",
    ),

  "slip.unit": ({ changes, from }) =>
    `${unlikely(changes)}\u00a0: valeur peut-être ${from === "mo" || from === "y" ? "donnée" : "lue"} en ${UNIT_IN_FULL[from]}.`,
  "slip.decimal-point": ({ changes }) =>
    `${unlikely(changes)}\u00a0: la virgule est peut-être mal placée, ou un zéro de trop ou de moins.`,
  "slip.digits-exchanged": ({ changes }) =>
    `${unlikely(changes)}\u00a0: deux chiffres ont peut-être été intervertis.`,
  "slip.fields-exchanged": ({ changes }) =>
    `${unlikely(changes)}\u00a0: les deux valeurs ont peut-être été interverties.`,
  "slip.outlier": ({ changes }) =>
    `${unlikely(changes)} au regard des autres mesures, et aucune erreur courante ne l’explique. Vérifiez de nouveau.`,

  "body-issue.length-missing": () =>
    "Il faut la longueur, ou au moins l’âge\u00a0: rien d’autre ne donne à lui seul un poids fiable. Mesurez du sommet du crâne au talon, enfant couché à plat.",
  "body-issue.segment-needs-age": ({ measurement: field }) =>
    `${capital(FRENCH_FIELD[field].the)} ne donne une longueur qu’avec l’âge\u00a0: saisissez l’âge, ou mesurez la longueur.`,
  "body-issue.segment-age-out-of-range": ({ measurement: field, ageMonths, low, high }) =>
    `${capital(FRENCH_FIELD[field].the)} ne donne une longueur que de ${writeAge(low)} à ${writeAge(high)}, et l’âge est de ${writeAge(ageMonths)}. Mesurez la longueur.`,
  "body-issue.measurement-out-of-range": ({ measurement: field, value, low, high }) =>
    `${capital(FRENCH_FIELD[field].the)}, ${measurement(field, value)}, sort du domaine du modèle corporel, ${range(field, low, high)}. Mesurez de nouveau, ou pesez l’enfant et saisissez le poids lu sur la balance.`,

  "body-warning.measurement-extrapolated": ({ measurement: field, value, low, high }) => {
    const seen = `${range(field, low, high)}${field === "lengthCm" ? "" : " à cette longueur"}`;
    return `${capital(FRENCH_FIELD[field].the)}, ${measurement(field, value)}, dépasse ce que le modèle corporel a rencontré (${seen})\u00a0: le poids est extrapolé.`;
  },
  "body-warning.measurement-not-used": ({ measurement: field }) =>
    field === "earlier"
      ? "Le poids antérieur a été donné mais n’est pas utilisé\u00a0: il faut l’âge actuel, et un âge d’alors qui ne soit pas postérieur."
      : `${capital(FRENCH_FIELD[field].the)} a été donné${e(field)} mais n’est pas utilisé${e(field)}\u00a0: le modèle corporel n’a pas de données à cette longueur.`,
  "body-warning.measurement-conflict": ({ measurement: field, value, low, high, outcome }) => {
    const what = capital(FRENCH_FIELD[field].the);
    const done =
      outcome === "left-out"
        ? "valeur écartée. Mesurez de nouveau."
        : "l’une des deux est fausse, et l’intervalle couvre les deux. Mesurez de nouveau les deux.";
    return value === undefined
      ? `${what} ne s’accorde pas avec les autres mesures\u00a0: valeur écartée.`
      : `${what}, ${measurement(field, value)}, ne s’accorde pas avec les autres mesures, qui feraient attendre ${range(field, rounded(low), rounded(high))}\u00a0: ${done}`;
  },
  "body-warning.measurement-set-aside": ({ measurement: field, because }) =>
    because === "oedema"
      ? `${capital(FRENCH_FIELD[field].the)} a été écarté${e(field)}, car l’œdème l’augmente.`
      : `${capital(FRENCH_FIELD[field].the)} a été écarté${e(field)}, car la grossesse l’augmente.`,
  "body-warning.usual-weight": ({ because }) =>
    because === "oedema"
      ? "Œdème\u00a0: le poids estimé est celui sans le liquide."
      : "Grossesse\u00a0: le poids estimé est celui d’avant.",
  "body-warning.missing-limb": ({ limb, share }) =>
    `Pour ${LIMB[limb]}, ${number(100 * share)}\u00a0% du corps ont été retirés, d’après des valeurs de l’adulte.`,
  "body-warning.length-from-segment": ({ measurement: field, lengthCm, sdCm }) =>
    `Longueur déduite ${FRENCH_FIELD[field].of}\u00a0: ${measurement("lengthCm", Math.round(lengthCm * 10) / 10)}, avec une erreur type de ${measurement("lengthCm", sdCm)}.`,
  "body-warning.no-length": () =>
    "Sans longueur, le poids suit l’âge\u00a0: l’intervalle est large, et il n’y a pas de poids idéal. Mesurez la longueur dès que possible.",
  "body-warning.no-girth": () =>
    "Aucun périmètre n’a été donné\u00a0: la corpulence est inconnue et l’intervalle est large. Mesurer le bras le resserre.",
  "body-warning.scale-weight-unlikely": ({ scaleKg, low, high }) =>
    `Le poids lu sur la balance, ${measurement("scaleKg", scaleKg)}, est peu probable avec ces mesures, qui prédisent ${range("scaleKg", low, high)}. Vérifiez la balance, son unité et les mesures.`,

  "rests.estimated": ({ rests }) =>
    `Estimé d’après ${list(
      rests.map((name) => FRENCH_FIELD[name].the),
      "et",
    )}.`,
  "rests.scale": () => "Lu sur la balance.",

  "caution.title": () => "Précautions",
  "caution.decision-support": () => "Ceci est une aide à la décision pour des cliniciens formés.",
  "caution.weigh": () => "Pesez l’enfant dès que possible.",
  "caution.local-guidelines": () =>
    "Les recommandations locales et le jugement d’un professionnel habilité priment.",
  "caution.check-doses": () => "Vérifiez chaque dose de manière indépendante.",
  "caution.not-a-device": () => "N’est pas un dispositif médical certifié.",

  "draft.title": () => "Projet de formulaire, non signé",
  "draft.text": () =>
    "Aucun pharmacien ni médecin habilité n’a relu ces doses. N’en administrez aucune avant de l’avoir vérifiée dans votre propre formulaire.",
};

/** "Périmètre brachial 19 mm peu probable". */
function unlikely(changes: readonly SlipChange[]): string {
  const named = changes.map(({ measurement: field, given }) => namedValue({ field, value: given }));
  return `${capital(list(named, "et"))}, peu probable`;
}

/** "périmètre brachial 190 mm", "âge 9 ans". */
function namedValue({ field, value }: { readonly field: QuantityField; readonly value: number }): string {
  return `${FRENCH_FIELD[field].name} ${isAge(field) ? writeAge(value) : measurement(field, value)}`;
}

/** "9 ans", "18 mois", "300 mois". */
function writeAge(ageMonths: number): string {
  const years = ageMonths / 12;
  return Number.isInteger(years) && years >= 2 ? `${years}\u00a0ans` : `${number(ageMonths)}\u00a0mois`;
}

/** One year is "an", one inch "pouce": symbols and "mois" stay as they are. */
function unitFor(value: number, unit: UnitSymbol): string {
  const word = UNIT[unit];
  const isWord = word.length > 2 && unit !== "mo";
  return isWord && FRENCH_VALUES.numbers.plural(value) === "one" ? word.replace(/s$/, "") : word;
}

/** The ending of a participle beside a field. */
function e(field: FieldName): string {
  return FRENCH_FIELD[field].isFeminine ? "e" : "";
}

function number(value: number): string {
  return write.writeValue(value, FRENCH_VALUES);
}

function measurement(field: FieldName, value: number): string {
  return write.writeMeasurement({ field, value }, FRENCH_VALUES);
}

function range(field: FieldName, low: number, high: number): string {
  return write.writeRange({ field, low, high }, FRENCH_VALUES);
}

/** Typed text between quotation marks, cut where it is too long to be read at a glance. */
function quote(text: string): string {
  const characters = [...text];
  return `«\u202f${characters.length > 40 ? `${characters.slice(0, 40).join("")}…` : text}\u202f»`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** "a", "a ou b", "a, b ou c". */
function list(items: readonly string[], word: "et" | "ou"): string {
  return items.length < 2 ? items.join("") : `${items.slice(0, -1).join(", ")} ${word} ${items.at(-1)}`;
}

/** To a tenth: what is expected of a child is known no better. */
function rounded(value: number): number {
  return Math.round(10 * value) / 10;
}
