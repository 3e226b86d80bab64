import type { Basis, Concentration, PerTime } from "../dosing/index.ts";
import * as units from "../units/index.ts";
import type { DosingCatalogue } from "./dosing-catalogue.ts";
import { FRENCH_VALUES } from "./french-values.ts";
import * as ages from "./write-age.ts";
import * as edge from "./write-edges.ts";

const { numbers } = FRENCH_VALUES;

/** After a number of kilograms. */
const BASIS: Readonly<Record<Basis, string>> = {
  total: "de poids total",
  ideal: "de poids idéal",
  adjusted: "de poids ajusté",
  lean: "de masse maigre",
};

/** On its own. */
const BASIS_NAME: Readonly<Record<Basis, string>> = {
  total: "le poids total",
  ideal: "le poids idéal",
  adjusted: "le poids ajusté",
  lean: "la masse maigre",
};

const PER_TIME: Readonly<Record<PerTime, string>> = { min: " × 60\u00a0min/h", h: "" };

/** What can be measured next, by its name in the measurements. */
const SETTLING: Readonly<Record<string, string>> = {
  armMm: "le périmètre brachial",
  waistCm: "le tour de taille",
  thighCm: "le périmètre de cuisse",
  calfCm: "le périmètre de mollet",
  headCm: "le périmètre crânien",
};

const number = (value: number): string => units.formatNumber(value, numbers);
const quantity = (dose: units.Dose): string => units.formatQuantity(dose, numbers);
const kilograms = (kg: number): string => units.formatWeight(kg, numbers);
const ml = (amount: number): string => quantity({ amount, unit: "mL" });
const rate = (amount: number): string => quantity({ amount, unit: "mL", per: "h" });
const strength = (concentration: Concentration): string => units.formatConcentration(concentration, numbers);
const writeAge = (months: number): string => ages.writeAge(months, FRENCH_VALUES);

function writeEdges(write: (value: number) => string, low: number | undefined, high: number | undefined) {
  return edge.writeEdges(write, low, high, FRENCH_VALUES);
}

/** "28,1 kg de poids total". */
function weight(kg: number, basis: Basis): string {
  return `${kilograms(kg)} ${BASIS[basis]}`;
}

/** "1,4 % de plus", "0,4 % de moins". */
function difference(percent: number): string {
  return `${number(Math.abs(percent))}\u00a0% de ${percent < 0 ? "moins" : "plus"}`;
}

function edges(by: "age" | "weight", low: number | undefined, high: number | undefined): string {
  return writeEdges(by === "age" ? writeAge : kilograms, low, high);
}

function percent(probability: number): string {
  const value = probability * 100;
  return `${value < 1 ? "moins de 1" : number(Math.round(value))}\u00a0%`;
}

function doses(value: number): string {
  return `${number(value)}\u00a0dose${numbers.plural(value) === "one" ? "" : "s"}`;
}

/** To a tenth of a minute. */
function withinMinutes(minutes: number): number {
  return Math.round(minutes * 10) / 10;
}

/** Machine-translated and reviewed by nobody; `FRENCH_LANGUAGE` says so to the reader. */
export const FRENCH_DOSING: DosingCatalogue = {
  step: {
    band: ({ by, value, low, high }) =>
      by === "age"
        ? `L’âge de ${writeAge(value)} est dans la tranche ${edges(by, low, high)}.`
        : `${kilograms(value)}\u00a0: tranche ${edges(by, low, high)}.`,
    "basis-swapped": ({ from, fromKg, toKg }) =>
      `La règle demande ${BASIS_NAME[from]} (${kilograms(fromKg)})\u202f; cet enfant pèse moins que l’idéal, le poids total (${kilograms(toKg)}) est donc utilisé.`,
    "adjusted-weight": ({ idealKg, share, totalKg, kg }) =>
      `${weight(idealKg, "ideal")} + ${number(share)} × (${weight(totalKg, "total")} − ${kilograms(idealKg)}) = ${weight(kg, "adjusted")} pour ce médicament.`,
    "per-kg": ({ perKg: dose, basis, kg, result }) =>
      `${quantity(dose)} × ${weight(kg, basis)} = ${quantity(result)}.`,
    "per-m2": ({ perM2, lengthCm, kg, surfaceM2, result }) =>
      `Surface corporelle = √(${number(lengthCm)}\u00a0cm × ${kilograms(kg)} ÷ ${number(3600)}) = ${number(surfaceM2)}\u00a0m²\u202f; ${quantity(perM2)} × ${number(surfaceM2)}\u00a0m² = ${quantity(result)}.`,
    "per-kg-burnt": ({ perKg: dose, basis, kg, burnPercent, result }) =>
      `${quantity(dose)} × ${weight(kg, basis)} × ${number(burnPercent)}\u00a0% brûlés = ${quantity(result)}.`,
    portion: ({ dose, sharePercent, overH, ml: volume, mlPerH }) =>
      `${number(sharePercent)}\u00a0% de ${quantity(dose)} = ${ml(volume)}, sur ${number(overH)}\u00a0h\u00a0: ${rate(mlPerH)}.`,
    fixed: ({ result }) => `La dose est de ${quantity(result)} quel que soit le poids.`,
    limit: ({ limit, from, result }) =>
      limit === "single-maximum"
        ? `${quantity(from)} dépasse le maximum par dose\u00a0: ${quantity(result)} à administrer.`
        : `${quantity(from)} est en dessous du minimum\u00a0: ${quantity(result)} à administrer.`,
    volume: ({ dose, strength: concentration, ml: volume }) =>
      `${quantity(dose)} ÷ ${strength(concentration)} = ${ml(volume)}.`,
    "weaker-strength": ({ ml: volume, measurableMl, from, to }) =>
      `${ml(volume)} à ${strength(from)}\u00a0: trop peu pour être mesuré (moins de ${ml(measurableMl)}) ou trop imprécis\u202f; la présentation à ${strength(to)} est prise.`,
    dilution: ({ ml: volume, measurableMl, takeMl, addMl, totalMl, diluent, from, to }) =>
      `${ml(volume)} à ${strength(from)}\u00a0: trop peu pour être mesuré (moins de ${ml(measurableMl)}). Prenez-en ${ml(takeMl)} et ajoutez ${ml(addMl)} de ${diluent}, soit ${ml(totalMl)} en tout, à ${strength(to)}.`,
    rounding: ({ exactMl, ml: volume, markMl, syringeMl, byRule, errorPercent }) =>
      byRule
        ? `${ml(exactMl)}\u00a0: prélever ${ml(volume)}, car la source de la dose arrondit à ${ml(markMl)} (${difference(errorPercent)}).`
        : syringeMl === undefined
          ? `${ml(exactMl)}\u00a0: régler sur ${ml(volume)}, par pas de ${ml(markMl)} (${difference(errorPercent)}).`
          : `${ml(exactMl)}\u00a0: prélever ${ml(volume)} dans une seringue de ${ml(syringeMl)}, graduée tous les ${ml(markMl)} (${difference(errorPercent)}).`,
    "drawn-up": ({ ml: volume, strength: concentration, result }) =>
      `${ml(volume)} × ${strength(concentration)} = ${quantity(result)}.`,
    equivalent: ({ ml: volume, strength: concentration, of, result }) =>
      `D’après l’étiquette, ${ml(volume)} × ${strength(concentration)} = ${quantity(result)} de ${of}.`,
    puffs: ({ dose, perPuff, exactPuffs, puffs, result, errorPercent }) => {
      const whole = quantity({ amount: puffs, unit: "puff" });
      const exact = quantity({ amount: exactPuffs, unit: "puff" });
      const asked = dose.unit === "puff" ? exact : `${quantity(dose)} ÷ ${quantity(perPuff)} = ${exact}`;
      const given = errorPercent === 0 ? "" : `\u00a0: donner ${whole} (${difference(errorPercent)})`;
      const first = dose.unit === "puff" && errorPercent === 0 ? "" : `${asked}${given}\u202f; `;
      return `${first}${whole} × ${quantity(perPuff)} = ${quantity(result)}.`;
    },
    "shortest-time": ({ dose, maximumRate, kg, minutes }) =>
      `${quantity(dose)} ÷ ${kg === undefined ? quantity(maximumRate) : `(${quantity(maximumRate)} × ${kilograms(kg)})`}\u00a0: en ${number(minutes)}\u00a0min ou plus.`,
    "least-volume": ({ dose, maximumConcentration, ml: volume }) =>
      `${quantity(dose)} ÷ ${strength(maximumConcentration)}\u00a0: à administrer dans ${ml(volume)} ou plus.`,
    tiers: ({ basis, parts, result }) =>
      `${parts
        .map(({ kg, perKg: dose }) => `${quantity(dose)} × ${kilograms(kg)}`)
        .join(" + ")} (selon ${BASIS_NAME[basis]}) = ${quantity(result)}.`,
    "fluid-rate": ({ perKg: dose, basis, kg, mlPerH }) =>
      `${quantity(dose)} × ${weight(kg, basis)}${dose.per === "kg/min" ? PER_TIME.min : ""} = ${rate(mlPerH)}.`,
    "pump-step": ({ exactMlPerH, mlPerH, errorPercent }) =>
      `${rate(exactMlPerH)}\u00a0: régler sur ${rate(mlPerH)} (${difference(errorPercent)}).`,
    "first-hour": ({ ml: volume, allowanceMl, sharePercent }) =>
      `La première heure apporte ${ml(volume)}, soit ${number(sharePercent)}\u00a0% des ${ml(allowanceMl)} d’entretien pour une heure.`,
    "device-step": ({ exactJ, settingJ, errorPercent }) =>
      `${quantity({ amount: exactJ, unit: "J" })}\u00a0: régler sur ${quantity({ amount: settingJ, unit: "J" })}, le réglage le plus proche de l’appareil (${difference(errorPercent)}).`,
    "added-to": ({ ml: volume, diluent }) => `La dose est ajoutée à ${ml(volume)} de ${diluent}.`,
    "preparation-left-out": ({ perKg: dose, totalMl, kg, lowKg, highKg }) =>
      `Une seringue de ${quantity(dose)} dans ${ml(totalMl)} se prépare pour ${writeEdges(kilograms, lowKg, highKg)} et non pour ${kilograms(kg)}\u00a0: elle est laissée de côté.`,
    preparation: ({ amount, perKg: dose, kg, totalMl, diluent, concentration }) =>
      dose === undefined || kg === undefined
        ? `${quantity(amount)} à compléter à ${ml(totalMl)} avec ${diluent} = ${strength(concentration)}.`
        : `${quantity(dose)} × ${kilograms(kg)} = ${quantity(amount)}, à compléter à ${ml(totalMl)} avec ${diluent} = ${strength(concentration)}.`,
    rate: ({ perKg: dose, per, basis, kg, concentration, exactMlPerH, mlPerH, errorPercent }) =>
      `${quantity(dose)} × ${weight(kg, basis)}${PER_TIME[per]} ÷ ${strength(concentration)} = ${rate(exactMlPerH)}${
        errorPercent === 0 ? "" : `, réglé sur ${rate(mlPerH)} (${difference(errorPercent)})`
      }.`,
  },
  warning: {
    limited: ({ by, from, to }) =>
      `${by === "minimum" ? "Relevée au minimum" : "Limitée au maximum par dose"}, ${quantity(to)}\u202f; selon le poids, ce serait ${quantity(from)}.`,
    rounded: ({ errorPercent, aboveTolerance, byRule }) =>
      byRule
        ? `Arrondie comme le dit la source de la dose\u00a0: ${difference(errorPercent)} que la dose exacte.`
        : aboveTolerance
          ? `Arrondie de plus de 5\u00a0%\u00a0: ${difference(errorPercent)} que ne le veut la règle.`
          : `Arrondie à ce qui se mesure\u00a0: ${difference(errorPercent)} que ne le veut la règle.`,
    "too-concentrated": ({ ml: volume, leastMl }) =>
      `${ml(volume)}\u00a0: plus concentré qu’il n’est permis\u202f; complétez à ${ml(leastMl)} ou plus.`,
    "no-preparation": ({ kg }) =>
      `Le formulaire n’a pas de préparation pour ${kilograms(kg)}\u00a0: il y a une dose et pas de débit\u202f; préparez la seringue selon l’usage local.`,
    "small-burn": ({ burnPercent, fromPercent }) =>
      `${number(burnPercent)}\u00a0% de surface brûlée, moins que les ${number(fromPercent)}\u00a0% à partir desquels ce liquide se calcule\u00a0: boire peut suffire.`,
    "fluid-load": ({ ml: volume, allowanceMl }) =>
      `La première heure de cette perfusion apporte ${ml(volume)}, plus que les ${ml(allowanceMl)} d’entretien pour une heure\u00a0: comptez-les dans les apports. Une préparation plus concentrée seulement si le médicament et la veine le permettent.`,
    diluted: ({ to }) => `Trop peu pour être mesuré sans dilution\u00a0: diluez d’abord à ${strength(to)}.`,
    "weaker-strength": ({ to }) =>
      `Trop peu pour être mesuré avec la présentation habituelle\u00a0: prélevez celle à ${strength(to)}.`,
    "not-measurable": ({ ml: volume }) =>
      `Aucune seringue ne mesure ${ml(volume)} à 10\u00a0% près\u00a0: la dose est exacte et doit être diluée selon l’usage local.`,
    "not-in-puffs": ({ puffs, perPuff }) =>
      `La dose est de ${quantity({ amount: puffs, unit: "puff" })} à ${quantity(perPuff)}, et une bouffée ne se divise pas\u00a0: cet inhalateur ne convient pas à cet enfant.`,
    "basis-swapped": ({ from, fromKg, totalKg }) =>
      `Plus léger que le poids idéal\u00a0: dose selon le poids total, ${kilograms(totalKg)}, et non selon ${BASIS_NAME[from]}, ${kilograms(fromKg)}.`,
    "bases-differ": ({ totalDose, idealDose }) =>
      `Poids total et poids idéal donnent des doses qui diffèrent de plus de 20\u00a0%\u00a0: ${quantity(totalDose)} selon le total, ${quantity(idealDose)} selon l’idéal.`,
    "age-needed": ({ for: reason, reason: text }) =>
      reason === "band"
        ? "La dose dépend de l’âge, qui n’est pas connu\u00a0: celle prévue pour un âge inconnu est prise."
        : reason === "neonate"
          ? "Si cet enfant peut avoir moins de 28\u00a0jours, la dose ne s’applique pas\u00a0: saisissez l’âge."
          : `L’âge n’est pas connu\u00a0: ${text ?? "une limite d’âge n’a pas pu être vérifiée"}`,
    "outside-weight-range": ({ kg, lowKg, highKg, reason }) =>
      `${kilograms(kg)} sort du domaine de cette dose (${writeEdges(kilograms, lowKg, highKg)})\u00a0: ${reason}`,
    "outside-age-range": ({ ageMonths, lowMonths, highMonths, reason }) =>
      `L’âge de ${writeAge(ageMonths)} sort du domaine de cette dose (${writeEdges(writeAge, lowMonths, highMonths)})\u00a0: ${reason}`,
    neonate: ({ because }) =>
      because === "age"
        ? "Moins de 28\u00a0jours\u00a0: cette dose n’a pas été écrite pour le nouveau-né\u202f; utilisez un formulaire néonatal."
        : "Moins de 3\u00a0kg\u00a0: cette dose n’a pas été écrite pour un enfant si petit\u202f; utilisez un formulaire néonatal.",
    "not-robust": ({ probabilityOutside, settledBy }) =>
      `Le poids est trop incertain pour cette dose\u00a0: probabilité de ${percent(probabilityOutside)} qu’elle sorte de l’intervalle admis pour le vrai poids de l’enfant.${
        settledBy
          ? ` Mesurez ${SETTLING[settledBy.measurement] ?? settledBy.measurement}\u00a0: il en resterait ${percent(settledBy.probabilityOutside)}.`
          : ""
      }`,
    "outside-accepted-range": ({ dosePerKg }) =>
      `Ce qui peut être administré, ${quantity(dosePerKg)}, sort de l’intervalle admis.`,
  },
  unavailable: {
    "weight-missing": ({ basis }) =>
      `Pas de dose\u00a0: elle dépend du calcul selon ${BASIS_NAME[basis]}, qui demande une longueur.`,
    "length-missing": () =>
      "Pas de dose\u00a0: elle dépend de la surface corporelle, qui demande une longueur.",
    "burn-percent-missing": ({ perPercent }) =>
      `Pas de dose\u00a0: elle dépend de la part brûlée de la surface corporelle, qui n’est pas connue\u202f; chaque 1\u00a0% reçoit ${quantity(perPercent)}.`,
    "age-missing": ({ choices }) =>
      `La dose dépend de l’âge, qui n’est pas connu\u00a0: ${choices
        .map(
          ({ lowMonths, highMonths, dose, volume }) =>
            `${quantity(dose)}${volume ? ` (${ml(volume.ml)})` : ""} ${writeEdges(writeAge, lowMonths, highMonths)}`,
        )
        .join("\u202f; ")}.`,
    "outside-bands": ({ by, value, low, high }) =>
      `Pas de dose\u00a0: ${by === "age" ? `l’âge de ${writeAge(value)}` : kilograms(value)} sort des tranches publiées (${edges(by, low, high)}).`,
    contraindicated: ({ by, value, low, high, reason }) =>
      `Contre-indiqué à ${by === "age" ? `l’âge de ${writeAge(value)}` : kilograms(value)} (prévu pour ${edges(by, low, high)})\u00a0: ${reason}`,
  },
  tracking: {
    "unknown-line": ({ lineId }) =>
      `${lineId} n’est pas dans ce formulaire\u00a0: ni ses limites ni la dose suivante ne sont connues. La dose compte dans les totaux du même médicament quand les unités peuvent être comparées.`,
    "unit-not-comparable": ({ dose, expectedUnit }) =>
      `${quantity(dose)} ne peut pas être comparé à la règle, qui est en ${expectedUnit}\u00a0: dose non comptée.`,
    "single-maximum-passed": ({ dose, maximum }) =>
      `Dose administrée\u00a0: ${quantity(dose)}, au-dessus du maximum par dose de ${quantity(maximum)}.`,
    "cumulative-maximum-passed": ({ total, maximum }) =>
      `Total administré\u00a0: ${quantity(total)}, au-dessus du maximum de ${quantity(maximum)}.`,
    "too-many-doses": ({ doses: given, maximumDoses }) =>
      `Déjà administré\u00a0: ${doses(given)}\u202f; maximum\u00a0: ${doses(maximumDoses)}.`,
    "too-soon": ({ atMinutes, earliestMinutes }) =>
      `Administrée ${number(withinMinutes(earliestMinutes - atMinutes))}\u00a0min trop tôt.`,
    "maximum-not-known": () =>
      "Le maximum de toutes les doses dépend d’un poids qui n’est pas connu\u00a0: il n’a pas pu être vérifié.",
  },
  burnPercent: {
    empty: () => "Saisissez la part brûlée de la surface corporelle en\u00a0%.",
    "not-a-number": ({ text }) =>
      `«\u202f${text}\u202f» n’est pas une part de la surface corporelle\u00a0: saisissez un nombre, par exemple 18.`,
    "out-of-limits": ({ value, low, high }) =>
      `La part brûlée de la surface corporelle doit dépasser ${number(low)} et ne pas dépasser ${number(high)}\u00a0%\u00a0: ${number(value)}\u00a0% saisis.`,
  },
  robustnessOmitted: {
    "weight-measured": "Le poids a été lu sur une balance.",
    "basis-not-total": "La dose ne dépend pas du poids total\u00a0: son incertitude n’intervient pas.",
    "no-accepted-range": "Le formulaire ne donne pas d’intervalle admis pour cette dose.",
    titrated: "La dose s’ajuste à son effet.",
  },
};
