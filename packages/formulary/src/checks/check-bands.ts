import type { Formulary, Rule, Use } from "@steelyard/core/dosing";
import type { FormularyFault } from "../formulary-fault.ts";
import { everyOption, everyUse } from "./place.ts";

/** A term newborn at the lower end: from here on an infusion must have a preparation. @source common-practice */
const LIGHTEST_KG = 2.5;

interface Band {
  readonly low: number | undefined;
  readonly high: number | undefined;
}

/** Bands rise without gap or overlap, and every range has its ends the right way round. */
export function checkBands(formulary: Formulary): FormularyFault[] {
  return [
    ...everyOption(formulary).flatMap(({ option, place }) => ruleBands(option.rule, place)),
    ...everyUse(formulary).flatMap(({ use, place }) => [
      ...(use.administration.dilution ? ruleBands(use.administration.dilution.volume, place) : []),
      ...use.limits.flatMap((limit) =>
        limit.by === "age"
          ? oneRange({ low: limit.lowMonths, high: limit.highMonths }, "months", `${place}, limit of age`)
          : oneRange({ low: limit.lowKg, high: limit.highKg }, "kg", `${place}, limit of weight`),
      ),
      ...(use.preparations ?? []).flatMap((preparation) =>
        preparation.lowKg !== undefined || preparation.highKg !== undefined
          ? oneRange(
              { low: preparation.lowKg, high: preparation.highKg },
              "kg",
              `${place}, preparation ${preparation.id}`,
            )
          : [],
      ),
      ...uncoveredWeights(use, place),
      ...bandsInOrder(
        (use.repeat?.cumulativeMaximum?.byWeight ?? []).map(({ lowKg, highKg }) => ({
          low: lowKg,
          high: highKg,
        })),
        "kg",
        `${place}, bands of the cumulative maximum`,
      ),
      ...closedAtTop(use, place),
    ]),
  ];
}

/** A child above the last band would have no maximum over all doses. */
function closedAtTop({ repeat }: Use, place: string): FormularyFault[] {
  const highKg = repeat?.cumulativeMaximum?.byWeight?.at(-1)?.highKg;
  if (highKg === undefined) return [];
  return [{ place, message: `the cumulative maximum ends at ${highKg} kg: leave its last band open` }];
}

/** Preparations may overlap, as the reader chooses; a weight that none is for would leave an infusion without a rate. */
function uncoveredWeights({ preparations = [], limits }: Use, place: string): FormularyFault[] {
  if (preparations.length === 0) return [];
  // A use that ends at an age or a weight, such as one for newborns, need not reach to the heaviest.
  if (limits.some((limit) => (limit.by === "age" ? limit.highMonths : limit.highKg) !== undefined)) return [];
  const edgesKg = preparations.flatMap(({ highKg }) => (highKg === undefined ? [] : [highKg]));
  const uncovered = [LIGHTEST_KG, ...edgesKg].filter(
    (kg) =>
      kg >= LIGHTEST_KG &&
      !preparations.some(({ lowKg = 0, highKg = Number.POSITIVE_INFINITY }) => lowKg <= kg && kg < highKg),
  );
  return [...new Set(uncovered)].map((kg) => ({
    place,
    message: `no preparation is for a child of ${kg} kg`,
  }));
}

function ruleBands(rule: Rule, place: string): FormularyFault[] {
  if (rule.kind === "age-bands" || rule.kind === "infusion-age-bands") {
    return bandsInOrder(
      rule.bands.map(({ lowMonths: low, highMonths: high }) => ({ low, high })),
      "months",
      `${place}, bands of age`,
    );
  }
  if (rule.kind === "weight-bands") {
    return bandsInOrder(
      rule.bands.map(({ lowKg: low, highKg: high }) => ({ low, high })),
      "kg",
      `${place}, bands of weight`,
    );
  }
  return [];
}

function bandsInOrder(bands: readonly Band[], unit: string, place: string): FormularyFault[] {
  return bands.flatMap((band, index) => {
    const next = bands[index + 1];
    const faults = oneRange(band, unit, place);
    if (next === undefined) return faults;
    if (band.high === undefined) {
      return [
        ...faults,
        { place, message: `the band from ${band.low} ${unit} is open, but is not the last` },
      ];
    }
    if (next.low === undefined || next.low === band.high) return faults;
    const message =
      next.low > band.high
        ? `nothing covers ${band.high} to ${next.low} ${unit}`
        : `two bands cover ${next.low} to ${band.high} ${unit}`;
    return [...faults, { place, message }];
  });
}

function oneRange({ low, high }: Band, unit: string, place: string): FormularyFault[] {
  if (low === undefined && high === undefined)
    return [{ place, message: "has neither a lower nor an upper edge" }];
  if (low === undefined || high === undefined || low < high) return [];
  return [{ place, message: `the lower edge ${low} ${unit} is not below the upper edge ${high} ${unit}` }];
}
