import {
  type BodyModel,
  type BodyReference,
  boxCoxZ,
  type CurveCoefficients,
  createBodyModel,
  pairKey,
  type Quantity,
  quantities,
  quantityValue,
  type Residual,
  type SexReference,
  type SplineBasis,
} from "@steelyard/core/body";
import { fitBoxCoxCurves } from "./fit-box-cox-curves.ts";
import { fitBoys } from "./fit-boys.ts";
import { fitCorrelation } from "./fit-correlation.ts";
import { fitResidual } from "./fit-residual.ts";
import type { FitChild } from "./select-children.ts";

/** Twenty equal steps in ln length over 45 to 205 cm; the penalty chooses how many are really used. */
const basis: SplineBasis = { low: Math.log(45), high: Math.log(205), intervals: 20 };

/** Stands in until the residual is fitted, which needs the curves and correlations first. */
const plainResidual: Residual = { spreadPower: 0, tailDf: 30, scale: 1 };

/** Fewer children than this with both quantities do not make a correlation. */
const fewestPairs = 300;

export interface FitOptions {
  readonly version: string;
  readonly quantities?: readonly Quantity[];
}

/** Fits the joint model: the curves of every quantity by sex, their correlations, and the share of boys. */
export function fitBodyModel(children: readonly FitChild[], options: FitOptions): BodyReference {
  const wanted = options.quantities ?? quantities;
  const sexes = { m: fitSex(ofSex(children, "m"), wanted), f: fitSex(ofSex(children, "f"), wanted) };
  const reference: BodyReference = {
    version: options.version,
    sourceIds: ["nhanes"],
    children: children.length,
    basis,
    lengthRangeCm: Object.fromEntries(wanted.map((quantity) => [quantity, lengthRange(children, quantity)])),
    fittedZ: {},
    boys: rounded(
      fitBoys({
        basis,
        x: Float64Array.from(children, ({ lengthCm }) => Math.log(lengthCm)),
        boy: children.map(({ sex }) => sex === "m"),
      }),
    ),
    residual: plainResidual,
    sexes,
  };
  const model = createBodyModel(reference);
  return {
    ...reference,
    fittedZ: Object.fromEntries(wanted.map((quantity) => [quantity, fittedZ({ model, children, quantity })])),
    residual: fitResidual({ model, children }),
  };
}

function ofSex(children: readonly FitChild[], sex: "m" | "f"): readonly FitChild[] {
  return children.filter((child) => child.sex === sex);
}

/** The quantity of a child in the model's own unit; undefined when it was not measured. */
export function quantityOf(child: FitChild, quantity: Quantity): number | undefined {
  switch (quantity) {
    case "weight":
      return child.weightKg;
    case "arm":
      return child.armMm;
    case "waist":
      return child.waistCm;
    case "thigh":
      return child.thighCm;
    case "calf":
      return child.calfCm;
    case "head":
      return child.headCm;
    case "age":
      // Published as completed months: the middle of the month is the best guess.
      return child.ageMonths === undefined ? undefined : quantityValue("ageMonths", child.ageMonths + 0.5);
  }
}

function fitSex(children: readonly FitChild[], wanted: readonly Quantity[]): SexReference {
  const curves: Partial<Record<Quantity, CurveCoefficients>> = {};
  for (const quantity of wanted) {
    const measured = children.filter((child) => quantityOf(child, quantity) !== undefined);
    const fitted = fitBoxCoxCurves({
      basis,
      x: Float64Array.from(measured, ({ lengthCm }) => Math.log(lengthCm)),
      y: Float64Array.from(measured, (child) => quantityOf(child, quantity) as number),
    });
    const [logMedian = [], logSigma = [], lambda = []] = fitted.coefficients.map(rounded);
    curves[quantity] = { logMedian, logSigma, lambda };
  }
  const model = curvesAlone(curves);
  const correlations: Record<string, readonly number[]> = {};
  wanted.forEach((first, i) => {
    for (const second of wanted.slice(i + 1)) {
      const both = children.filter(
        (child) => quantityOf(child, first) !== undefined && quantityOf(child, second) !== undefined,
      );
      if (both.length < fewestPairs) continue;
      const fitted = fitCorrelation({
        basis,
        x: Float64Array.from(both, ({ lengthCm }) => Math.log(lengthCm)),
        first: Float64Array.from(both, (child) => zOf({ model, child, quantity: first })),
        second: Float64Array.from(both, (child) => zOf({ model, child, quantity: second })),
      });
      correlations[pairKey(first, second)] = rounded(fitted.coefficients[0] ?? []);
    }
  });
  return { curves, correlations };
}

/** The curves as they will be shipped, read through the model itself, tables and all, for the z-scores of one sex. */
function curvesAlone(curves: SexReference["curves"]): BodyModel {
  const sex: SexReference = { curves, correlations: {} };
  return createBodyModel({
    version: "",
    sourceIds: [],
    children: 0,
    basis,
    lengthRangeCm: {},
    fittedZ: {},
    boys: new Array<number>(basis.intervals + 3).fill(0),
    residual: plainResidual,
    sexes: { m: sex, f: sex },
  });
}

/** z-scores that hold all but 1 in 1,000 of the children at each end. */
function fittedZ(given: {
  model: BodyModel;
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

function zOf({ model, child, quantity }: { model: BodyModel; child: FitChild; quantity: Quantity }): number {
  const curve = model.at(child.sex, child.lengthCm).curve(quantity);
  return boxCoxZ(curve, Math.log(quantityOf(child, quantity) as number));
}

/** Lengths that hold all but 1 in 500 at each end of the children who had the quantity measured, to whole centimetres. */
function lengthRange(children: readonly FitChild[], quantity: Quantity): readonly [number, number] {
  if (quantity === "weight" || quantity === "arm") return [45, 205];
  const lengths = children
    .filter((child) => quantityOf(child, quantity) !== undefined)
    .map(({ lengthCm }) => lengthCm)
    .sort((a, b) => a - b);
  const at = (share: number): number => lengths[Math.round(share * (lengths.length - 1))] as number;
  return [Math.floor(at(0.002)), Math.ceil(at(0.998))];
}

/** Seven significant digits: far below what the data can tell, and the same text on every machine. */
function rounded(coefficients: readonly number[]): readonly number[] {
  return coefficients.map((value) => Number(value.toPrecision(7)));
}
