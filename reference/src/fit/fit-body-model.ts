import {
  type BodyReference,
  boxCoxZ,
  type CurveCoefficients,
  createIndexedModel,
  type IndexedModel,
  type ModelIndex,
  pairKey,
  type Quantity,
  type Residual,
  type SexReference,
} from "@steelyard/core/body";
import { fitBoxCoxCurves } from "./fit-box-cox-curves.ts";
import { fitBoys } from "./fit-boys.ts";
import type { FitChild } from "./fit-child.ts";
import { fitCorrelation } from "./fit-correlation.ts";
import { fitResidual } from "./fit-residual.ts";
import type { IndexLayout } from "./model-indexes.ts";
import { populationWeights } from "./population-weights.ts";
import { quantityOf } from "./quantity-of.ts";

/** Stands in until the residual is fitted, which needs the curves and correlations first. */
const plainResidual: Residual = { spreadPower: 0, tailDf: 30, scale: 1 };

/** Fewer children than this with both quantities do not make a correlation. */
const fewestPairs = 300;

export interface FitOptions {
  readonly version: string;
  readonly sourceIds: readonly string[];
  readonly layout: IndexLayout;
  /** Only these quantities (with the weight); all of the layout when absent. */
  readonly quantities?: readonly Quantity[];
}

/** Fits the joint model along one index: the curves of every quantity by sex, their correlations, and the share of boys. */
export function fitBodyModel(all: readonly FitChild[], options: FitOptions): BodyReference {
  const { layout, version, sourceIds } = options;
  const { index, basis } = layout;
  const wanted = options.quantities ?? layout.quantities;
  const children = all.filter((child) => isInside(child, index));
  const sexes = {
    m: fitSex({ children: ofSex(children, "m"), wanted, layout }),
    f: fitSex({ children: ofSex(children, "f"), wanted, layout }),
  };
  const measured = children.filter(({ armMm }) => armMm !== undefined);
  const reference: BodyReference = {
    version,
    sourceIds,
    children: measured.length,
    index,
    basis,
    indexRange: Object.fromEntries(
      wanted.map((quantity) => [quantity, indexRange({ children, quantity, index })]),
    ),
    fittedZ: {},
    boys: rounded(
      fitBoys({ basis, x: logIndex(measured, index), boy: measured.map(({ sex }) => sex === "m") }),
      3,
    ),
    residual: plainResidual,
    bend: [],
    sexes,
  };
  const model = createIndexedModel(reference);
  const shape = fitResidual({ model, children: measured, basis });
  return {
    ...reference,
    fittedZ: Object.fromEntries(wanted.map((quantity) => [quantity, fittedZ({ model, children, quantity })])),
    residual: shape.residual,
    bend: shape.bend.map((coefficients) => rounded(coefficients, 4)),
  };
}

function isInside(child: FitChild, { quantity, low, high }: ModelIndex): boolean {
  const value = quantityOf(child, quantity);
  return value !== undefined && value >= low && value <= high;
}

function logIndex(children: readonly FitChild[], { quantity }: ModelIndex): Float64Array {
  return Float64Array.from(children, (child) => Math.log(quantityOf(child, quantity) as number));
}

function ofSex(children: readonly FitChild[], sex: "m" | "f"): readonly FitChild[] {
  return children.filter((child) => child.sex === sex);
}

function fitSex(given: {
  children: readonly FitChild[];
  wanted: readonly Quantity[];
  layout: IndexLayout;
}): SexReference {
  const { children, wanted, layout } = given;
  const { basis, index } = layout;
  const curves: Partial<Record<Quantity, CurveCoefficients>> = {};
  const weightOf = new Map<Quantity, (child: FitChild) => number>();
  for (const quantity of wanted) {
    const measured = children.filter((child) => quantityOf(child, quantity) !== undefined);
    const own = isPart.has(quantity)
      ? populationWeights(measured, partZ(curvesAlone(curves, layout)))
      : (): number => 1;
    weightOf.set(quantity, (child) => own(child) * (child.weight ?? 1));
    const fitted = fitBoxCoxCurves({
      basis,
      x: logIndex(measured, index),
      y: Float64Array.from(measured, (child) => quantityOf(child, quantity) as number),
      weights: Float64Array.from(measured, weightOf.get(quantity) as (child: FitChild) => number),
    });
    const [logMedian = [], logSigma = [], lambda = []] = fitted.coefficients;
    curves[quantity] = {
      logMedian: rounded(logMedian, 5),
      logSigma: rounded(logSigma, 4),
      lambda: rounded(lambda, 3),
    };
  }
  const model = curvesAlone(curves, layout);
  const correlations: Record<string, readonly number[]> = {};
  wanted.forEach((first, i) => {
    for (const second of wanted.slice(i + 1)) {
      const both = children.filter(
        (child) => quantityOf(child, first) !== undefined && quantityOf(child, second) !== undefined,
      );
      if (both.length < fewestPairs) continue;
      // Measured together means measured where the scarcer of the two was: its weights make the pair a sample of the whole.
      const scarcer = isPart.has(first) ? first : second;
      const fitted = fitCorrelation({
        basis,
        x: logIndex(both, index),
        first: Float64Array.from(both, (child) => zOf({ model, child, quantity: first })),
        second: Float64Array.from(both, (child) => zOf({ model, child, quantity: second })),
        weights: Float64Array.from(both, weightOf.get(scarcer) as (child: FitChild) => number),
      });
      correlations[pairKey(first, second)] = rounded(fitted.coefficients[0] ?? [], 4);
    }
  });
  return { curves, correlations };
}

/** Quantities that only some cycles measured. */
const isPart: ReadonlySet<Quantity> = new Set(["thigh", "calf"]);

function partZ(model: IndexedModel): (child: FitChild) => number {
  return (child) => zOf({ model, child, quantity: "weight" });
}

/** The curves as they will be shipped, read through the model itself, tables and all, for the z-scores of one sex. */
function curvesAlone(curves: SexReference["curves"], { basis, index }: IndexLayout): IndexedModel {
  const sex: SexReference = { curves, correlations: {} };
  return createIndexedModel({
    version: "",
    sourceIds: [],
    children: 0,
    index,
    basis,
    indexRange: {},
    fittedZ: {},
    boys: new Array<number>(basis.intervals + 3).fill(0),
    residual: plainResidual,
    bend: [],
    sexes: { m: sex, f: sex },
  });
}

/** z-scores that hold all but 1 in 1,000 of the children at each end. */
function fittedZ(given: {
  model: IndexedModel;
  children: readonly FitChild[];
  quantity: Quantity;
}): readonly [number, number] {
  const { model, children, quantity } = given;
  const scores = children
    .filter((child) => quantityOf(child, quantity) !== undefined)
    .map((child) => zOf({ model, child, quantity }))
    .sort((a, b) => a - b);
  const at = (share: number): number =>
    Number((scores[Math.round(share * (scores.length - 1))] as number).toFixed(2));
  return [at(0.001), at(0.999)];
}

/** z of a quantity of a child in the model. */
export function zOf(given: { model: IndexedModel; child: FitChild; quantity: Quantity }): number {
  const { model, child, quantity } = given;
  const curve = model.at(child.sex, quantityOf(child, model.index.quantity) as number).curve(quantity);
  return boxCoxZ(curve, Math.log(quantityOf(child, quantity) as number));
}

/**
 * Index values that hold all but 1 in 500 at each end of the children who had the quantity measured, rounded outwards; the
 * whole index for weight, arm and length, which every child has.
 */
function indexRange(given: {
  children: readonly FitChild[];
  quantity: Quantity;
  index: ModelIndex;
}): readonly [number, number] {
  const { children, quantity, index } = given;
  if (quantity === "weight" || quantity === "arm" || quantity === "length") return [index.low, index.high];
  const values = children
    .filter((child) => quantityOf(child, quantity) !== undefined)
    .map((child) => quantityOf(child, index.quantity) as number)
    .sort((a, b) => a - b);
  const at = (share: number): number => values[Math.round(share * (values.length - 1))] as number;
  return [Math.floor(at(0.002)), Math.ceil(at(0.998))];
}

/**
 * To so many decimals: 0.001 % of a median and 0.01 % of a spread, far below what the data can tell, and the same short text on every
 * machine (the page that opens at the bedside carries these numbers).
 */
function rounded(coefficients: readonly number[], decimals: number): readonly number[] {
  return coefficients.map((value) => Number(value.toFixed(decimals)));
}
