import type { Formulary, Rule } from "@steelyard/core/dosing";
import type { FormularyFault } from "../formulary-fault.ts";
import { everyOption, everyUse } from "./place.ts";

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
        preparation.kind === "fixed"
          ? oneRange(
              { low: preparation.lowKg, high: preparation.highKg },
              "kg",
              `${place}, preparation ${preparation.id}`,
            )
          : [],
      ),
    ]),
  ];
}

function ruleBands(rule: Rule, place: string): FormularyFault[] {
  if (rule.kind === "age-bands") {
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
