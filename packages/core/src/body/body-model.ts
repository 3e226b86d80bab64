import { type BodyReference, type Quantity, quantities, type Residual } from "./body-reference.ts";
import { type BoxCox, boxCoxLogValue } from "./box-cox.ts";
import { type SplineBasis, splineValue } from "./cubic-spline.ts";
import type { Sex } from "./measurements.ts";

/** Lengths the model can be asked for, cm. */
export const modelLengthCm = { low: 45, high: 205 } as const;

/** Half a centimetre: linear interpolation between such points is within 0.01 % of the splines in weight. */
const stepCm = 0.5;
const points = (modelLengthCm.high - modelLengthCm.low) / stepCm + 1;

/** The curves and correlations of one sex at one length. */
export interface BodyAt {
  /** P(boy) or P(girl) at this length, nothing else known. */
  readonly share: number;
  curve(quantity: Quantity): BoxCox;
  /** The values between which 998 of 1,000 children of this sex and length lie. */
  fitted(quantity: Quantity): { readonly low: number; readonly high: number };
  correlation(first: Quantity, second: Quantity): number;
}

/** The joint model of a child's body, ready for use: every curve tabulated by length. */
export interface BodyModel {
  readonly version: string;
  readonly residual: Residual;
  /** Whether the quantity was fitted at this length. */
  covers(quantity: Quantity, lengthCm: number): boolean;
  /** Lengths between which the quantity was fitted, cm; absent when the model does not know it. */
  lengthRange(quantity: Quantity): readonly [low: number, high: number] | undefined;
  at(sex: Sex, lengthCm: number): BodyAt;
}

/**
 * Makes the body model from the coefficients of the fit.
 *
 * Throws a `RangeError` when a curve has the wrong number of coefficients.
 */
export function createBodyModel(reference: BodyReference): BodyModel {
  const tables = { m: tabulate(reference, "m"), f: tabulate(reference, "f") };
  const lengthRange = (quantity: Quantity): readonly [number, number] | undefined =>
    reference.lengthRangeCm[quantity];
  return {
    version: reference.version,
    residual: reference.residual,
    lengthRange,
    covers(quantity, lengthCm) {
      const range = lengthRange(quantity);
      return range !== undefined && lengthCm >= range[0] && lengthCm <= range[1];
    },
    at(sex, lengthCm) {
      const table = tables[sex];
      const position =
        (Math.min(Math.max(lengthCm, modelLengthCm.low), modelLengthCm.high) - modelLengthCm.low) / stepCm;
      const index = Math.min(Math.floor(position), points - 2);
      const part = position - index;
      const read = (column: Float64Array): number =>
        (column[index] as number) * (1 - part) + (column[index + 1] as number) * part;
      return {
        share: read(table.share),
        curve(quantity) {
          const columns = columnsOf(table, quantity);
          return {
            logMedian: read(columns.logMedian),
            sigma: read(columns.sigma),
            lambda: read(columns.lambda),
          };
        },
        fitted(quantity) {
          const columns = columnsOf(table, quantity);
          return { low: read(columns.low), high: read(columns.high) };
        },
        correlation(first, second) {
          if (first === second) return 1;
          const column = table.correlations[indexOf[first] * quantities.length + indexOf[second]];
          return column === undefined ? 0 : read(column);
        },
      };
    },
  };
}

const indexOf = Object.fromEntries(quantities.map((quantity, i) => [quantity, i])) as Readonly<
  Record<Quantity, number>
>;

/** The name of a pair of quantities in the reference file: `weight~arm`, whichever comes first. */
export function pairKey(first: Quantity, second: Quantity): string {
  return indexOf[first] < indexOf[second] ? `${first}~${second}` : `${second}~${first}`;
}

function columnsOf(table: SexTable, quantity: Quantity): CurveColumns {
  const columns = table.curves[indexOf[quantity]];
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

function tabulate(reference: BodyReference, sex: Sex): SexTable {
  const { basis } = reference;
  const column = (coefficients: readonly number[], transform: (value: number) => number): Float64Array =>
    Float64Array.from({ length: points }, (_, i) =>
      transform(splineAtLength(basis, coefficients, modelLengthCm.low + i * stepCm)),
    );
  const same = (value: number): number => value;
  const own = reference.sexes[sex];
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
        logMedian.map((_, i) =>
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

function splineAtLength(basis: SplineBasis, coefficients: readonly number[], lengthCm: number): number {
  return splineValue(basis, coefficients, Math.log(lengthCm));
}
