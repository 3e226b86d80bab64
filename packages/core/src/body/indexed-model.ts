import { bendOf } from "./bend-of.ts";
import {
  type BodyReference,
  type ModelIndex,
  type Quantity,
  quantities,
  type Residual,
  type SexReference,
} from "./body-reference.ts";
import { type BoxCox, boxCoxLogValue } from "./box-cox.ts";
import { splineValue } from "./cubic-spline.ts";
import type { Sex } from "./measurements.ts";

/** The curves and correlations of one sex at one length (or age). */
export interface BodyAt {
  /** P(boy) or P(girl) at this index, nothing else known. */
  readonly share: number;
  curve(quantity: Quantity): BoxCox;
  /** The values between which 998 of 1,000 children of this sex and index lie. */
  fitted(quantity: Quantity): { readonly low: number; readonly high: number };
  correlation(first: Quantity, second: Quantity): number;
  /** What the straight line of the joint normal misses at an expected z of weight, in units of variance (1 - variance). */
  bend(expectedZ: number): number;
}

/** The joint model along one index, ready for use: every curve tabulated. */
export interface IndexedModel {
  readonly version: string;
  readonly index: ModelIndex;
  readonly residual: Residual;
  /** Whether the quantity was fitted at this index. */
  covers(quantity: Quantity, index: number): boolean;
  at(sex: Sex, index: number): BodyAt;
}

/**
 * Makes the model along one index from the coefficients of the fit.
 *
 * Throws a `RangeError` when a curve has the wrong number of coefficients.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { defaultBodyModel } from "@steelyard/core/body";
 *
 * const { byLength } = defaultBodyModel(); // made by createIndexedModel from the file of the fit
 * assert.ok(Math.exp(byLength.at("m", 136).curve("weight").logMedian) > 25);
 * ```
 */
export function createIndexedModel(reference: BodyReference): IndexedModel {
  const { index } = reference;
  const bends = reference.bend.map((coefficients) => tabulateColumn(reference, coefficients, same));
  const tables = { m: tabulate(reference, "m"), f: tabulate(reference, "f") };
  const last = pointsOf(index) - 2;
  return {
    version: reference.version,
    index,
    residual: reference.residual,
    covers(quantity, value) {
      const range = reference.indexRange[quantity];
      return range !== undefined && value >= range[0] && value <= range[1];
    },
    at(sex, value) {
      const position = (Math.min(Math.max(value, index.low), index.high) - index.low) / index.step;
      const row = Math.min(Math.floor(position), last);
      return new TableRow(tables[sex], bends, row, position - row);
    },
  };
}

/** A place between two rows of the tables. A class, since a million children make two million of these and closures cost more. */
class TableRow implements BodyAt {
  readonly share: number;
  readonly #table: SexTable;
  readonly #bends: readonly Float64Array[];
  readonly #row: number;
  readonly #part: number;

  constructor(table: SexTable, bends: readonly Float64Array[], row: number, part: number) {
    this.#table = table;
    this.#bends = bends;
    this.#row = row;
    this.#part = part;
    this.share = this.#read(table.share);
  }

  #read(column: Float64Array): number {
    const before = column[this.#row] as number;
    return before + this.#part * ((column[this.#row + 1] as number) - before);
  }

  curve(quantity: Quantity): BoxCox {
    const { logMedian, sigma, lambda } = columnsOf(this.#table, quantity);
    return { logMedian: this.#read(logMedian), sigma: this.#read(sigma), lambda: this.#read(lambda) };
  }

  fitted(quantity: Quantity): { readonly low: number; readonly high: number } {
    const { low, high } = columnsOf(this.#table, quantity);
    return { low: this.#read(low), high: this.#read(high) };
  }

  correlation(first: Quantity, second: Quantity): number {
    if (first === second) return 1;
    const column = this.#table.correlations[order[first] * quantities.length + order[second]];
    return column === undefined ? 0 : this.#read(column);
  }

  bend(expectedZ: number): number {
    const coefficients: number[] = [];
    for (const column of this.#bends) coefficients.push(this.#read(column));
    return bendOf(coefficients, expectedZ);
  }
}

const order = Object.fromEntries(quantities.map((quantity, i) => [quantity, i])) as Readonly<
  Record<Quantity, number>
>;

/**
 * The name of a pair of quantities in the reference file: `weight~arm`, whichever comes first.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { pairKey } from "@steelyard/core/body";
 *
 * assert.equal(pairKey("arm", "weight"), "weight~arm");
 * ```
 */
export function pairKey(first: Quantity, second: Quantity): string {
  return order[first] < order[second] ? `${first}~${second}` : `${second}~${first}`;
}

function columnsOf(table: SexTable, quantity: Quantity): CurveColumns {
  const columns = table.curves[order[quantity]];
  if (columns === undefined) {
    throw new RangeError(
      `Cannot give a curve as the model must know the quantity: current value is ${quantity}`,
    );
  }
  return columns;
}

interface CurveColumns {
  readonly logMedian: Float64Array;
  readonly sigma: Float64Array;
  readonly lambda: Float64Array;
  readonly low: Float64Array;
  readonly high: Float64Array;
}

interface SexTable {
  readonly share: Float64Array;
  readonly curves: readonly (CurveColumns | undefined)[];
  /** By first x second quantity, both ways round; undefined where the two were never measured together. */
  readonly correlations: readonly (Float64Array | undefined)[];
}

function pointsOf({ low, high, step }: ModelIndex): number {
  return Math.round((high - low) / step) + 1;
}

function tabulateColumn(
  { basis, index }: BodyReference,
  coefficients: readonly number[],
  transform: (value: number) => number,
): Float64Array {
  return Float64Array.from({ length: pointsOf(index) }, (_, i) =>
    transform(splineValue(basis, coefficients, Math.log(index.low + i * index.step))),
  );
}

function tabulate(reference: BodyReference, sex: Sex): SexTable {
  const points = pointsOf(reference.index);
  const column = (coefficients: readonly number[], transform: (value: number) => number): Float64Array =>
    tabulateColumn(reference, coefficients, transform);
  const own: SexReference = reference.sexes[sex];
  return {
    share: column(reference.boys, (logit) => {
      const boy = 1 / (1 + Math.exp(-logit));
      return sex === "m" ? boy : 1 - boy;
    }),
    curves: quantities.map((quantity) => {
      const curve = own.curves[quantity];
      if (curve === undefined) return undefined;
      const logMedian = column(curve.logMedian, same);
      const sigma = column(curve.logSigma, Math.exp);
      const lambda = column(curve.lambda, same);
      const valueAt = (z: number): Float64Array =>
        Float64Array.from({ length: points }, (_, i) =>
          Math.exp(
            boxCoxLogValue(
              { logMedian: logMedian[i] as number, sigma: sigma[i] as number, lambda: lambda[i] as number },
              z,
            ),
          ),
        );
      const [lowZ, highZ] = reference.fittedZ[quantity] ?? [-3, 3];
      return { logMedian, sigma, lambda, low: valueAt(lowZ), high: valueAt(highZ) };
    }),
    correlations: quantities.flatMap((first) =>
      quantities.map((second) => {
        const coefficients = own.correlations[pairKey(first, second)];
        return coefficients === undefined ? undefined : column(coefficients, Math.tanh);
      }),
    ),
  };
}

function same(value: number): number {
  return value;
}
