import { computeSheet, type Formulary, type ProblemId, type SheetLine } from "@steelyard/core/dosing";
import { type Kilograms, kilograms } from "@steelyard/core/units";

/** The weights that one page serves, and the one its doses are computed for. */
export interface WeightStep {
  readonly fromKg: number;
  readonly toKg: number;
  readonly kg: number;
}

/** Every use of the formulary for a child of whom each weight is `kg`: the reader chooses the page by the weight that a line names. */
export function sheetAt(formulary: Formulary, kg: number): readonly SheetLine[] {
  const own = kilograms(kg);
  const weights: Readonly<Record<"totalKg" | "idealKg" | "adjustedKg" | "leanKg", Kilograms>> = {
    totalKg: own,
    idealKg: own,
    adjustedKg: own,
    leanKg: own,
  };
  return computeSheet({ formulary, weights });
}

/** The formulary with the uses of some problems alone. */
export function withProblems(given: {
  readonly formulary: Formulary;
  readonly problems: readonly ProblemId[];
}): Formulary {
  const { formulary, problems } = given;
  const medicines = formulary.medicines
    .map((medicine) => ({
      ...medicine,
      uses: medicine.uses.filter(({ problem }) => problems.includes(problem)),
    }))
    .filter(({ uses }) => uses.length > 0);
  return { ...formulary, medicines };
}

/** Lightest and heaviest that a booklet is made for, kg. */
const lightestKg = 2.5;
const heaviestKg = 100;

/** What a dose may change by within a page. */
const mostChange = 1.1;

/**
 * The weight steps of a booklet: within a page no dose as drawn up (nor rate, nor volume) changes by more than 10 %.
 *
 * Weights are tried as a strip gives them (0.1 kg under 10, 0.5 to 30, then whole kilograms). A page grows until some dose at its heavy
 * end is more than 1.1 times that at its light end; a band of the formulary begins a page of its own. The doses of a page are those of the
 * weight in the middle on the logarithm, so that they are at most some 5 % from the doses of either end.
 */
export function weightSteps(given: {
  readonly formulary: Formulary;
  readonly problems: readonly ProblemId[];
}): readonly WeightStep[] {
  const formulary = withProblems(given);
  const tried = weightsTried();
  const amounts = tried.map((kg) => amountsOf(sheetAt(formulary, kg)));
  const steps: WeightStep[] = [];
  let first = 0;
  for (let i = 1; i <= tried.length; i += 1) {
    const ends = i === tried.length || changes(amounts.slice(first, i), amounts[i] as Amounts);
    if (!ends) continue;
    const fromKg = tried[first] as number;
    const toKg = tried[i - 1] as number;
    const own = tried.slice(first, i);
    const middle = Math.sqrt(fromKg * toKg);
    const kg = own.reduce((best, weight) =>
      Math.abs(weight - middle) < Math.abs(best - middle) ? weight : best,
    );
    steps.push({ fromKg, toKg, kg });
    first = i;
  }
  return steps;
}

function weightsTried(): readonly number[] {
  const tried: number[] = [];
  for (
    let tenths = lightestKg * 10;
    tenths <= heaviestKg * 10;
    tenths += tenths < 100 ? 1 : tenths < 300 ? 5 : 10
  ) {
    tried.push(tenths / 10);
  }
  return tried;
}

type Amounts = ReadonlyMap<string, number | string>;

/** What a reader would draw up or set for each line; the reason in place of a number where there is none. */
function amountsOf(sheet: readonly SheetLine[]): Amounts {
  const amounts = new Map<string, number | string>();
  for (const line of sheet) {
    if (line.unavailable !== undefined) {
      amounts.set(line.id, line.unavailable.type);
      continue;
    }
    // A dose per kg stays as it is; what changes is its rate.
    const amount = line.rate?.mlPerH ?? line.dose.amount * unitScale(line.dose.unit);
    amounts.set(line.id, amount);
    for (const [i, next] of line.further.entries()) {
      amounts.set(`${line.id}.${i}`, next.dose.amount * unitScale(next.dose.unit));
    }
  }
  return amounts;
}

function unitScale(unit: string): number {
  return unit === "g" ? 1e9 : unit === "mg" ? 1e6 : unit === "microgram" ? 1e3 : 1;
}

/** Whether any amount differs by more than 10 % from any of those of the page so far. */
function changes(before: readonly Amounts[], next: Amounts): boolean {
  for (const [id, value] of next) {
    for (const own of before) {
      const other = own.get(id);
      if (other === undefined) return true;
      if (typeof value === "string" || typeof other === "string") {
        if (value !== other) return true;
      } else if (Math.max(value, other) > Math.min(value, other) * mostChange + 1e-9) {
        return true;
      }
    }
  }
  return false;
}
