import type { CalibrationIssue } from "@steelyard/core/body";
import type { Result } from "@steelyard/core/result";
import type { RegressionLimits } from "../accuracy/regression-limits.ts";
import type { AccuracyFigure, BootstrapInterval } from "../bootstrap/index.ts";
import type { CalibrationGain, LearningPoint } from "../calibration/index.ts";
import type { DoseConsequence } from "../consequence/index.ts";

/** Intervals by drawing whole clusters, for one method. */
export interface ClusteredAccuracy {
  readonly method: string;
  readonly clusters: number;
  readonly children: number;
  readonly figures: Readonly<Partial<Record<AccuracyFigure, BootstrapInterval>>>;
}

/** What was drawn, and from what. */
export interface ClusterBootstrap {
  /** Column whose words are the clusters; absent where each row is its own. */
  readonly column?: string;
  readonly replicates: number;
  readonly methods: readonly ClusteredAccuracy[];
  /** Methods with fewer than two clusters, or more than can be drawn in good time. */
  readonly leftOut: readonly { readonly method: string; readonly clusters: number }[];
}

/** Regression-based limits of agreement of the percentage error on the mean of estimate and scale, kg. */
export interface MethodRegression {
  readonly method: string;
  readonly limits: RegressionLimits;
  readonly sizesKg: { readonly least: number; readonly most: number };
}

export interface MethodConsequence {
  readonly method: string;
  /** Every n-th child was judged. */
  readonly every: number;
  readonly consequence: DoseConsequence;
}

/** What calibrating with the study's own children would give. */
export interface SiteLearning {
  /** Every n-th child was taken. */
  readonly every: number;
  readonly children: number;
  readonly gain: Result<CalibrationGain, CalibrationIssue>;
  readonly curve: readonly LearningPoint[];
}

/** What is computed beyond the accuracy of each method; everything drawn by chance comes from one seed. */
export interface StudyFindings {
  readonly seed: number;
  readonly bootstrap: ClusterBootstrap;
  readonly regression: readonly MethodRegression[];
  readonly consequences: readonly MethodConsequence[];
  readonly learning: SiteLearning;
}
