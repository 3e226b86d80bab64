import { type SplineBasis, splineSize, splineWeights } from "@steelyard/core/body";
import { CholeskyDecomposition, Matrix } from "ml-matrix";

/** What a likelihood says of one row, given its linear predictors. Filled in place, since there are many rows. */
interface RowLikelihood {
  /** Derivative of the log-likelihood by each predictor. */
  readonly score: Float64Array;
  /** Expected information, predictors x predictors, row-major. */
  readonly information: Float64Array;
}

export interface SmoothCurvesProblem {
  readonly basis: SplineBasis;
  /** The index of each row (ln length, or age). */
  readonly x: Float64Array;
  /** How much each row counts; 1 when absent. */
  readonly weights?: Float64Array;
  /** The curve each predictor begins from: a constant, or coefficients. */
  readonly start: readonly (number | readonly number[])[];
  /**
   * Order of the differences that are penalised, per predictor. 2 leaves a straight line unpunished (a power law in ln length)
   * and continues it where there are no children; 1 leaves a constant, and continues that.
   */
  readonly order: readonly (1 | 2)[];
  /** Fills `into` for this row and returns its log-likelihood. */
  readonly likelihood: (row: number, predictors: Float64Array, into: RowLikelihood) => number;
}

export interface SmoothCurves {
  /** One coefficient vector per predictor. */
  readonly coefficients: readonly (readonly number[])[];
  readonly logLikelihood: number;
  /** Effective degrees of freedom of each curve. */
  readonly effectiveDf: readonly number[];
  readonly iterations: number;
}

const maxIterations = 60;

/**
 * Fits penalised cubic B-spline curves by Fisher scoring, all predictors together, with the smoothness of each
 * curve chosen by the generalised Fellner-Schall update (restricted likelihood).
 *
 * @source eilers1996
 * @source wood2017
 */
export function fitSmoothCurves(problem: SmoothCurvesProblem): SmoothCurves {
  const size = splineSize(problem.basis);
  const predictors = problem.start.length;
  const total = size * predictors;
  const rowBasis = evaluateBasis(problem);
  const penalties = problem.order.map((order) => differencePenalty({ size, order }));
  const smoothness = problem.start.map(() => 10);
  let theta = Float64Array.from(
    problem.start.flatMap((from) => (typeof from === "number" ? new Array<number>(size).fill(from) : from)),
  );
  let state = accumulate({ problem, rowBasis, theta, size });
  let previousObjective = Number.NEGATIVE_INFINITY;
  const effectiveDf = problem.start.map(() => size);
  let iterations = 0;
  for (; iterations < maxIterations; iterations++) {
    const penalised = addPenalty({ information: state.information, penalties, smoothness, size });
    const gradient = Matrix.columnVector(
      Array.from(
        state.gradient,
        (g, i) => g - penaltyGradient({ penalties, smoothness, theta, size, index: i }),
      ),
    );
    const factor = new CholeskyDecomposition(penalised);
    const step = factor.solve(gradient);
    const objectiveOf = (candidate: Float64Array, logLikelihood: number): number =>
      logLikelihood -
      smoothness.reduce(
        (sum, s, p) =>
          sum +
          (s / 2) * roughness({ penalty: penalties[p] as Matrix, theta: candidate, size, predictor: p }),
        0,
      );
    const current = objectiveOf(theta, state.logLikelihood);
    let scale = 1;
    let next = theta;
    let nextState = state;
    for (let halving = 0; halving < 12; halving++, scale /= 2) {
      const candidate = theta.map((t, i) => t + scale * step.get(i, 0));
      const candidateState = accumulate({ problem, rowBasis, theta: candidate, size });
      if (objectiveOf(candidate, candidateState.logLikelihood) >= current - 1e-9 * Math.abs(current)) {
        next = candidate;
        nextState = candidateState;
        break;
      }
    }
    theta = next;
    state = nextState;

    const inverse = new CholeskyDecomposition(
      addPenalty({ information: state.information, penalties, smoothness, size }),
    ).solve(Matrix.eye(total));
    for (let p = 0; p < predictors; p++) {
      const s = smoothness[p] as number;
      const block = inverse.subMatrix(p * size, (p + 1) * size - 1, p * size, (p + 1) * size - 1);
      const penalty = penalties[p] as Matrix;
      const trace = block.mmul(penalty).trace();
      const rough = roughness({ penalty, theta, size, predictor: p });
      const rank = size - (problem.order[p] as number);
      effectiveDf[p] = size - s * trace;
      smoothness[p] = Math.min(
        Math.max((s * Math.max(rank / s - trace, 1e-8)) / Math.max(rough, 1e-12), 1e-3),
        1e7,
      );
    }
    const objective = objectiveOf(theta, state.logLikelihood);
    if (Math.abs(objective - previousObjective) < 1e-7 * Math.abs(objective)) break;
    previousObjective = objective;
  }
  return {
    coefficients: problem.start.map((_, p) => Array.from(theta.subarray(p * size, (p + 1) * size))),
    logLikelihood: state.logLikelihood,
    effectiveDf,
    iterations,
  };
}

interface RowBasis {
  readonly first: Int32Array;
  readonly weights: Float64Array;
}

function evaluateBasis({ basis, x }: SmoothCurvesProblem): RowBasis {
  const first = new Int32Array(x.length);
  const weights = new Float64Array(x.length * 4);
  x.forEach((value, row) => {
    const at = splineWeights(basis, value);
    first[row] = at.first;
    weights.set(at.weights, row * 4);
  });
  return { first, weights };
}

interface Accumulated {
  readonly logLikelihood: number;
  readonly gradient: Float64Array;
  readonly information: Matrix;
}

function accumulate(given: {
  problem: SmoothCurvesProblem;
  rowBasis: RowBasis;
  theta: Float64Array;
  size: number;
}): Accumulated {
  const { problem, rowBasis, theta, size } = given;
  const predictors = problem.start.length;
  const total = size * predictors;
  const gradient = new Float64Array(total);
  const information = new Float64Array(total * total);
  const eta = new Float64Array(predictors);
  const into = {
    score: new Float64Array(predictors),
    information: new Float64Array(predictors * predictors),
  };
  let logLikelihood = 0;
  for (let row = 0; row < problem.x.length; row++) {
    const first = rowBasis.first[row] as number;
    for (let p = 0; p < predictors; p++) {
      let value = 0;
      for (let i = 0; i < 4; i++)
        value += (rowBasis.weights[row * 4 + i] as number) * (theta[p * size + first + i] as number);
      eta[p] = value;
    }
    const weight = problem.weights?.[row] ?? 1;
    logLikelihood += weight * problem.likelihood(row, eta, into);
    for (let p = 0; p < predictors; p++) {
      for (let i = 0; i < 4; i++) {
        const wi = rowBasis.weights[row * 4 + i] as number;
        const r = p * size + first + i;
        gradient[r] = (gradient[r] as number) + weight * wi * (into.score[p] as number);
        // The upper triangle alone: the lower is its mirror.
        for (let q = p; q < predictors; q++) {
          const info = weight * wi * (into.information[p * predictors + q] as number);
          for (let j = q === p ? i : 0; j < 4; j++) {
            const at = r * total + q * size + first + j;
            information[at] = (information[at] as number) + info * (rowBasis.weights[row * 4 + j] as number);
          }
        }
      }
    }
  }
  for (let r = 0; r < total; r++)
    for (let c = 0; c < r; c++) information[r * total + c] = information[c * total + r] as number;
  return { logLikelihood, gradient, information: Matrix.from1DArray(total, total, information) };
}

/** D'D for differences of the given order. */
function differencePenalty({ size, order }: { size: number; order: 1 | 2 }): Matrix {
  const difference = Matrix.zeros(size - order, size);
  const stencil = order === 1 ? [-1, 1] : [1, -2, 1];
  for (let i = 0; i < size - order; i++) {
    for (const [j, value] of stencil.entries()) difference.set(i, i + j, value);
  }
  return difference.transpose().mmul(difference);
}

function addPenalty(given: {
  information: Matrix;
  penalties: readonly Matrix[];
  smoothness: readonly number[];
  size: number;
}): Matrix {
  const { information, penalties, smoothness, size } = given;
  const sum = information.clone();
  smoothness.forEach((s, p) => {
    const penalty = penalties[p] as Matrix;
    for (let i = 0; i < size; i++) {
      for (let j = 0; j < size; j++) {
        const r = p * size + i;
        const c = p * size + j;
        sum.set(r, c, sum.get(r, c) + s * penalty.get(i, j));
      }
    }
  });
  // A coefficient no row touches (at the far ends) still needs a finite value: the straight-line
  // continuation. The ridge is small enough not to move any other.
  for (let i = 0; i < size * smoothness.length; i++) sum.set(i, i, sum.get(i, i) + 1e-8);
  return sum;
}

function penaltyGradient(given: {
  penalties: readonly Matrix[];
  smoothness: readonly number[];
  theta: Float64Array;
  size: number;
  index: number;
}): number {
  const { penalties, smoothness, theta, size, index } = given;
  const p = Math.floor(index / size);
  const penalty = penalties[p] as Matrix;
  const i = index % size;
  let sum = 0;
  for (let j = 0; j < size; j++) sum += penalty.get(i, j) * (theta[p * size + j] as number);
  return (smoothness[p] as number) * sum;
}

function roughness(given: { penalty: Matrix; theta: Float64Array; size: number; predictor: number }): number {
  const { penalty, theta, size, predictor } = given;
  let sum = 0;
  for (let i = 0; i < size; i++) {
    for (let j = 0; j < size; j++) {
      sum +=
        (theta[predictor * size + i] as number) * penalty.get(i, j) * (theta[predictor * size + j] as number);
    }
  }
  return sum;
}
