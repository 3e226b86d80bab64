/** A fault planted in a copy of the engine or the draft; some test of those named must fail on it. */
export interface Mutant {
  readonly name: string;
  /** From the root of the repository. */
  readonly file: string;
  /** A text that stands in the file once and what it becomes, or a place in a medicine file and its new value. */
  readonly edit:
    | { readonly from: string; readonly to: string }
    | { readonly at: string; readonly value: unknown };
  readonly tests: readonly string[];
}

const CORE = "packages/core/src/";
const MEDICINES = "packages/formulary/src/medicines/";

const EXACT = "packages/core/test/dosing-exact.test.ts";
const PUFFS = "packages/core/test/dosing-puffs.test.ts";
const RULES = "packages/core/test/dosing-rules.test.ts";
const DELIVERY = "packages/core/test/dosing-delivery.test.ts";
const SUBSTANCES = "packages/core/test/dosing-substances.test.ts";
const RATES = "packages/core/test/dosing-rates.test.ts";
const SETTLES = "packages/core/test/dosing-settles.test.ts";
const TRACK = "packages/core/test/track-given-doses.test.ts";
const INFUSIONS = "packages/core/test/infusion-published.test.ts";
const PUBLISHED = "packages/formulary/test/doses-published.test.ts";
const VALIDATE = "packages/formulary/test/draft-valid.test.ts";
const UCUM = "packages/formulary/test/ucum.test.ts";
const OWN = "packages/formulary/test/ownership/";

function engine(name: string, file: string, from: string, to: string, ...tests: readonly string[]): Mutant {
  return { name, file: CORE + file, edit: { from, to }, tests };
}

function draft(
  name: string,
  medicine: string,
  at: string,
  value: unknown,
  ...tests: readonly string[]
): Mutant {
  return { name, file: `${MEDICINES}${medicine}.json`, edit: { at, value }, tests };
}

function ownership(name: string, file: string, from: string, to: string, test: string): Mutant {
  return { name, file: `packages/formulary/src/${file}`, edit: { from, to }, tests: [OWN + test] };
}

export const mutants: readonly Mutant[] = [
  engine(
    "mg ten times too small in every conversion",
    "units/convert-dose.ts",
    "mg: 1e6",
    "mg: 1e5",
    PUBLISHED,
  ),
  engine("micrograms taken for mg", "units/convert-dose.ts", "microgram: 1e3", "microgram: 1e6", PUBLISHED),
  engine("units of different kinds converted", "units/convert-dose.ts", "from === to ||", "true ||", UCUM),
  engine(
    "the single maximum dropped",
    "dosing/limited-dose.ts",
    "maximum && compare(amount, maximum) > 0",
    "maximum && compare(amount, amount) > 0",
    PUBLISHED,
  ),
  engine(
    "the minimum dropped",
    "dosing/limited-dose.ts",
    "minimum && compare(amount, minimum) < 0",
    "minimum && compare(amount, amount) < 0",
    RULES,
    DELIVERY,
  ),
  engine("body surface with 360 for 3,600", "dosing/limited-dose.ts", ") / 3600)", ") / 360)", RULES),
  engine(
    "a band that holds its upper edge",
    "dosing/child-facts.ts",
    "compare(value, exactly(high)) < 0",
    "compare(value, exactly(high)) <= 0",
    RULES,
  ),
  engine(
    "a band that lacks its lower edge",
    "dosing/child-facts.ts",
    "compare(value, exactly(low)) >= 0",
    "compare(value, exactly(low)) > 0",
    RULES,
  ),
  engine(
    "a band of age that holds its upper edge",
    "dosing/resolve-rule.ts",
    "ageMonths < highMonths",
    "ageMonths <= highMonths",
    RULES,
  ),
  engine(
    "an underweight child dosed on ideal weight",
    "dosing/choose-basis.ts",
    "compare(total, ideal) >= 0",
    "compare(total, ideal) !== 99",
    RULES,
  ),
  engine(
    "total weight in place of one that is not known",
    "dosing/choose-basis.ts",
    "own ? own.kg : child.kgByBasis[asked];",
    "own ? own.kg : (child.kgByBasis[asked] ?? child.kgByBasis.total);",
    RULES,
  ),
  engine(
    "the share of the excess taken of the whole weight",
    "dosing/choose-basis.ts",
    "subtract(total, ideal)",
    "total",
    RULES,
  ),
  draft(
    "phenytoin with a tenfold share of the excess",
    "phenytoin",
    "uses/seizure/options/obesity/rule/shareOfExcess",
    13.3,
    VALIDATE,
  ),
  engine("newborns told from 2.8 days on", "dosing/applicability.ts", "(28 * 12)", "(2.8 * 12)", RULES),
  engine(
    "rounding past the maximum",
    "dosing/measure-volume.ts",
    "maximumMl === undefined || compare(ml, maximumMl) <= 0",
    "maximumMl === undefined || ml.denominator > 0",
    DELIVERY,
  ),
  engine(
    "rounding under the minimum",
    "dosing/measure-volume.ts",
    "compare(ml, minimumMl) < 0",
    "compare(ml, ml) < 0",
    DELIVERY,
  ),
  engine(
    "the nearest mark in place of a rule that rounds up",
    "dosing/measure-volume.ts",
    "up: ceilToMultiple",
    "up: roundToMultiple",
    SUBSTANCES,
  ),
  engine(
    "dose times strength in place of dose over strength",
    "dosing/draw-up.ts",
    "const exactMl = divide(limited.amount, perMl);",
    "const exactMl = multiply(limited.amount, perMl);",
    PUBLISHED,
  ),
  engine(
    "a dilution that is not counted",
    "dosing/draw-up.ts",
    "? multiply(content.exactPerMl, fraction(dilution.takeMl, dilution.totalMl))\n    : content.exactPerMl;",
    "? content.exactPerMl\n    : content.exactPerMl;",
    DELIVERY,
  ),
  engine(
    "a strength too strong to measure taken neat",
    "dosing/draw-up.ts",
    "if (compare(exactMl, exactly(measurableMl)) < 0 ||",
    "if (compare(exactMl, exactMl) < 0 ||",
    DELIVERY,
  ),
  engine(
    "an element taken for its salt",
    "dosing/contents-of.ts",
    "candidate.of === of",
    "candidate.label !== undefined || of === undefined",
    SUBSTANCES,
  ),
  engine(
    "an energy above the maximum of the rule",
    "dosing/deliver.ts",
    "maximum === undefined || compare(exactly(joules), maximum) <= 0",
    "maximum === undefined || joules > 0",
    DELIVERY,
  ),
  engine(
    "per minute taken for per hour",
    "dosing/infusion-rate.ts",
    "min: exactly(60)",
    "min: exactly(1)",
    INFUSIONS,
  ),
  engine(
    "a pump set past the highest dose",
    "dosing/prepare-infusion.ts",
    "compare(nearest, highest) > 0 ?",
    "compare(nearest, nearest) > 0 ?",
    EXACT,
  ),
  engine(
    "an infusion past its maximum for the hour",
    "dosing/prepare-infusion.ts",
    "const startPerKg = lesser(exactly(rule.startPerKg), capPerKg);",
    "const startPerKg = exactly(rule.startPerKg);",
    RATES,
  ),
  engine(
    "every tier of weight counted from nothing",
    "dosing/tiered-amount.ts",
    "const own = subtract(edge, counted);",
    "const own = edge;",
    RATES,
  ),
  engine(
    "4-4-1 for 4-2-1",
    "dosing/maintenance-fluid.ts",
    "{ upToKg: 20, perKg: 2 }",
    "{ upToKg: 20, perKg: 4 }",
    RATES,
  ),
  engine(
    "a third of a burn's fluid in the first 8 h",
    "dosing/fluid-losses.ts",
    "first24hMl / 2",
    "first24hMl / 3",
    RATES,
  ),
  engine(
    "the percent of a burn passed over",
    "dosing/limited-dose.ts",
    "multiply(perPercent, percent)",
    "perPercent",
    EXACT,
  ),
  engine(
    "the whole of a fluid in each of its parts",
    "dosing/fluid-portions.ts",
    "multiply(totalMl, exactly(share))",
    "totalMl",
    EXACT,
  ),
  engine(
    "puffs past the maximum",
    "dosing/give-puffs.ts",
    "passes ? floorToMultiple(exactPuffs, ONE) : nearest",
    "nearest",
    EXACT,
  ),
  engine(
    "a puff taken for a microgram",
    "dosing/give-puffs.ts",
    'unit === "puff"\n      ? ONE',
    'unit !== "J"\n      ? ONE',
    PUFFS,
  ),
  engine(
    "the infusion of the first age at every age",
    "dosing/resolve-rule.ts",
    "ageMonths >= lowMonths && (highMonths === undefined || ageMonths < highMonths)",
    "ageMonths >= 0 && lowMonths >= 0",
    RATES,
  ),
  engine(
    "a syringe by weight past its range",
    "dosing/prepare-infusion.ts",
    "preparations.filter(({ lowKg, highKg }) => isWithin(child.kgByBasis.total, lowKg, highKg))",
    "preparations.filter(() => child.kgByBasis !== undefined)",
    RATES,
  ),
  engine(
    "a whole mL for a newborn where the mark of the syringe is meant",
    "dosing/compute-sheet.ts",
    "isWithin(kgByBasis.total, rounding.fromKg, undefined) ? rounding : undefined",
    "isWithin(kgByBasis.total, undefined, undefined) ? rounding : undefined",
    PUBLISHED,
  ),
  engine(
    "a rate per hour taken for one per minute",
    "dosing/giving-limits.ts",
    'per === "h" ? 60 : 1',
    'per === "h" ? 1 : 1',
    SUBSTANCES,
  ),
  engine(
    "the next dose due while the hours that count are used up",
    "dosing/track-given-doses.ts",
    "isOver ? freeAgainMinutes() : Number.NEGATIVE_INFINITY",
    "isOver ? Number.NEGATIVE_INFINITY : Number.NEGATIVE_INFINITY",
    TRACK,
  ),
  engine(
    "the bands of a cumulative maximum passed over",
    "dosing/use-limits.ts",
    "band ?? cumulative ?? {}",
    "cumulative ?? band ?? {}",
    TRACK,
  ),
  engine(
    "a flat rate that never binds",
    "dosing/giving-limits.ts",
    "compare(flat, asked) < 0",
    "compare(flat, flat) < 0",
    SUBSTANCES,
  ),
  engine(
    "the low end of an infusion past its maximum",
    "dosing/prepare-infusion.ts",
    "pumpRate(lesser(multiply(exactly(rule.lowPerKg), factor), highest), highest)",
    "pumpRate(multiply(exactly(rule.lowPerKg), factor), { numerator: 9999, denominator: 1 })",
    RATES,
  ),
  engine(
    "too strong a mixture not marked",
    "dosing/giving-limits.ts",
    "compare(ml, exactMl) < 0",
    "compare(ml, ml) < 0",
    SUBSTANCES,
  ),
  engine(
    "the ends of the accepted range swapped",
    "dosing/robustness.ts",
    "probability(cumulative, dose / highPerKg)",
    "probability(cumulative, dose / lowPerKg)",
    DELIVERY,
  ),
  engine(
    "a measurement that settles nothing proposed",
    "dosing/robustness.ts",
    "if (probabilityOutside <= ROBUST_BELOW) return {",
    "if (probabilityOutside <= 1) return {",
    SETTLES,
  ),
  engine(
    "total and ideal doses a fifth apart not marked",
    "dosing/dose-line.ts",
    "fraction(6, 5)",
    "fraction(12, 5)",
    RULES,
  ),
  engine(
    "doses of yesterday counted today",
    "dosing/track-given-doses.ts",
    "withinH === undefined || record.atMinutes > atMinutes - 60 * withinH",
    "withinH === undefined || record.atMinutes <= atMinutes",
    TRACK,
  ),
  engine(
    "a cumulative maximum per kg taken as the whole",
    "dosing/use-limits.ts",
    "multiply(amountIn(perKg, unit), chosen.value.kg)",
    "amountIn(perKg, unit)",
    TRACK,
  ),
  engine(
    "a dose under 1 mg written with a wrong power of ten",
    "units/format-quantity.ts",
    "withoutDrift(amount * 1000)",
    "withoutDrift(amount * 100)",
    "packages/core/src/units/format-quantity.test.ts",
  ),
  draft(
    "adrenaline ten times too much",
    "adrenaline",
    "uses/arrest/options/by-weight/rule/amountPerKg",
    100,
    PUBLISHED,
  ),
  draft(
    "adrenaline in mg for micrograms",
    "adrenaline",
    "uses/arrest/options/by-weight/rule/unit",
    "mg",
    PUBLISHED,
  ),
  draft(
    "a maximum in micrograms for mg",
    "lorazepam",
    "uses/seizure/options/#1/rule/maximum/unit",
    "microgram",
    VALIDATE,
  ),
  draft(
    "a maximum ten times too high",
    "amiodarone",
    "uses/arrest/options/by-weight/rule/maximum/amount",
    3000,
    VALIDATE,
    PUBLISHED,
  ),
  draft("a strength ten times too strong", "ceftriaxone", "strengths/#1/amountPerMl", 1000, PUBLISHED),
  draft(
    "suxamethonium on ideal weight",
    "suxamethonium",
    "uses/intubation/options/#1/rule/bands/#2/rule/basis",
    "ideal",
    PUBLISHED,
  ),
  draft(
    "an off-by-one band of age",
    "midazolam",
    "uses/seizure-buccal/options/by-age/rule/bands/#2/lowMonths",
    13,
    VALIDATE,
  ),
  draft(
    "defibrillation with 40 J/kg",
    "defibrillation",
    "uses/arrest/options/#1/rule/amountPerKg",
    40,
    PUBLISHED,
    VALIDATE,
  ),
  draft(
    "a source that nobody has",
    "adenosine",
    "uses/tachycardia/options/#1/citations/#1/sourceId",
    "nowhere",
    VALIDATE,
  ),
  ownership(
    "a fingerprint over the title alone",
    "ownership/sign-off.ts",
    "sha256(canonicalJson(content))",
    "sha256(canonicalJson((content as Formulary).title))",
    "sign-off.test.ts",
  ),
  ownership(
    "an overlay that does not look at what it changes",
    "ownership/apply-overlay.ts",
    "canonicalJson(present.value) !== canonicalJson(change.from)",
    "canonicalJson(present.value) !== canonicalJson(present.value)",
    "apply-overlay.test.ts",
  ),
  ownership(
    "a table whose doses are not taken back",
    "ownership/edited-part.ts",
    'amountPerKg: read.number("amount"),',
    "amountPerKg: rest.amountPerKg,",
    "dose-table.test.ts",
  ),
  ownership(
    "a difference of a maximum not seen",
    "ownership/compare-formularies.ts",
    "if (canonicalJson(before ?? null) === canonicalJson(after ?? null)) return [];",
    'if (path.includes("maximum")) return [];',
    "compare-formularies.test.ts",
  ),
];
