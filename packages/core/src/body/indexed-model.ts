import { withinBend } from "./bend-of.ts";
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
      return new TableRow(tables[sex], row, position - row);
    },
  };
}

/** A place between two rows of the table. A class, since a million children make two million of these and closures cost more. */
class TableRow implements BodyAt {
  readonly share: number;
  readonly #table: SexTable;
  /** Where the two rows begin. */
  readonly #before: number;
  readonly #after: number;
  readonly #part: number;

  constructor(table: SexTable, row: number, part: number) {
    this.#table = table;
    this.#before = row * table.width;
    this.#after = this.#before + table.width;
    this.#part = part;
    this.share = this.#read(table.share);
  }

  #read(column: number): number {
    const { cells } = this.#table;
    const before = cells[this.#before + column] as number;
    return before + this.#part * ((cells[this.#after + column] as number) - before);
  }

  curve(quantity: Quantity): BoxCox {
    const first = curveColumn(this.#table, quantity);
    return { logMedian: this.#read(first), sigma: this.#read(first + 1), lambda: this.#read(first + 2) };
  }

  fitted(quantity: Quantity): { readonly low: number; readonly high: number } {
    const first = curveColumn(this.#table, quantity);
    return { low: this.#read(first + 3), high: this.#read(first + 4) };
  }

  correlation(first: Quantity, second: Quantity): number {
    if (first === second) return 1;
    const column = this.#table.correlations[first][second];
    return column === undefined ? 0 : this.#read(column);
  }

  bend(expectedZ: number): number {
    const { bend, bendTerms } = this.#table;
    const m = withinBend(expectedZ);
    // By Horner's rule, and without a list: this is read for every child and sex.
    let value = 0;
    for (let i = bendTerms - 1; i >= 0; i--) value = value * m + this.#read(bend + i);
    return value;
  }
}

const order = perQuantity((quantity) => quantities.indexOf(quantity));

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

function curveColumn(table: SexTable, quantity: Quantity): number {
  const column = table.curves[quantity];
  if (column === undefined) {
    throw new RangeError(
      `Cannot give a curve as the model must know the quantity: current value is ${quantity}`,
    );
  }
  return column;
}

/** Everything of one sex, row by row along the index, so that what is read together lies together. The rest says which column is what. */
interface SexTable {
  readonly cells: Float64Array;
  readonly width: number;
  readonly share: number;
  readonly bend: number;
  readonly bendTerms: number;
  /** The first of five columns of each quantity: ln median, sigma, lambda, lowest and highest fitted. */
  readonly curves: PerQuantity<number | undefined>;
  /** By first x second quantity, both ways round; undefined where the two were never measured together. */
  readonly correlations: PerQuantity<PerQuantity<number | undefined>>;
}

type PerQuantity<T> = Readonly<Record<Quantity, T>>;

/** One lookup by name at reading, and every object of the same shape. */
function perQuantity<T>(makeFor: (quantity: Quantity) => T): PerQuantity<T> {
  return Object.fromEntries(quantities.map((quantity) => [quantity, makeFor(quantity)])) as Record<
    Quantity,
    T
  >;
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
  const columns: Float64Array[] = [];
  const add = (column: Float64Array): number => columns.push(column) - 1;
  const tabulated = (coefficients: readonly number[], transform = same): Float64Array =>
    tabulateColumn(reference, coefficients, transform);
  const own: SexReference = reference.sexes[sex];
  const share = add(
    tabulated(reference.boys, (logit) => {
      const boy = 1 / (1 + Math.exp(-logit));
      return sex === "m" ? boy : 1 - boy;
    }),
  );
  const curves = perQuantity((quantity) => {
    const curve = own.curves[quantity];
    if (curve === undefined) return undefined;
    const logMedian = tabulated(curve.logMedian);
    const sigma = tabulated(curve.logSigma, Math.exp);
    const lambda = tabulated(curve.lambda);
    const valueAt = (z: number): Float64Array =>
      logMedian.map((own, i) =>
        Math.exp(
          boxCoxLogValue({ logMedian: own, sigma: sigma[i] as number, lambda: lambda[i] as number }, z),
        ),
      );
    const [lowZ, highZ] = reference.fittedZ[quantity] ?? [-3, 3];
    const first = add(logMedian);
    for (const column of [sigma, lambda, valueAt(lowZ), valueAt(highZ)]) add(column);
    return first;
  });
  const pairs = new Map<string, number>();
  for (const [key, coefficients] of Object.entries(own.correlations)) {
    pairs.set(key, add(tabulated(coefficients, Math.tanh)));
  }
  const correlations = perQuantity((first) => perQuantity((second) => pairs.get(pairKey(first, second))));
  const bend = columns.length;
  for (const coefficients of reference.bend) add(tabulated(coefficients));
  const width = columns.length;
  const cells = new Float64Array(width * pointsOf(reference.index));
  columns.forEach((column, i) => {
    column.forEach((cell, row) => {
      cells[row * width + i] = cell;
    });
  });
  return { cells, width, share, bend, bendTerms: reference.bend.length, curves, correlations };
}

function same(value: number): number {
  return value;
}
