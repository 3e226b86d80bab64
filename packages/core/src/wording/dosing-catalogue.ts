import type {
  DosingWarning,
  RobustnessOmitted,
  TrackingWarning,
  Unavailable,
  WorkingStep,
} from "../dosing/index.ts";
import type { BurnPercentIssue } from "../entry/index.ts";

type ByStep = { [V in WorkingStep as V["step"]]: (step: V) => string };
type ByType<T extends { readonly type: string }> = { [V in T as V["type"]]: (value: V) => string };

/**
 * One language of the sheet: a sentence for every step of the working, every warning, every reason.
 *
 * The keys follow from the types themselves, so that a new step does not compile before it has its sentence.
 */
export interface DosingCatalogue {
  readonly step: ByStep;
  readonly warning: ByType<DosingWarning>;
  readonly unavailable: ByType<Unavailable>;
  readonly tracking: ByType<TrackingWarning>;
  readonly burnPercent: ByType<BurnPercentIssue>;
  readonly robustnessOmitted: Readonly<Record<RobustnessOmitted, string>>;
}
