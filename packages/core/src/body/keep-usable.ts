import { err, ok, type Result } from "../result.ts";
import type { FoundIndex } from "./find-index.ts";
import { fittedRange } from "./fitted-range.ts";
import type { BodyAt } from "./indexed-model.ts";
import { limbFraction } from "./limb-fraction.ts";
import type { MeasurementName, Measurements } from "./measurements.ts";
import type { NamedObservation } from "./observe-measurements.ts";
import { proposeUnit } from "./propose-unit.ts";
import { type MeasuredName, quantityOfName } from "./quantity-value.ts";
import type { BodyIssue, BodyWarning } from "./weight-estimate.ts";

/** Girths that fluid under the skin, or a pregnancy, makes measure something else than the body. */
const swollenBy = {
  oedema: new Set<MeasurementName>(["armMm", "waistCm", "thighCm", "calfCm"]),
  pregnant: new Set<MeasurementName>(["waistCm"]),
} as const;

const none: readonly (keyof typeof swollenBy)[] = [];

function conditionsOf({ oedema, pregnant }: Measurements): readonly (keyof typeof swollenBy)[] {
  if (!oedema && !pregnant) return none;
  return (["oedema", "pregnant"] as const).filter((condition) =>
    condition === "oedema" ? oedema : pregnant,
  );
}

/** Leaves out what this model, or this child's condition, has no use for, and says so; refuses what cannot be a measurement. */
export function keepUsable(given: {
  observed: readonly NamedObservation[];
  found: FoundIndex;
  bodies: readonly BodyAt[];
  measurements: Measurements;
}): Result<
  { readonly kept: readonly NamedObservation[]; readonly warnings: readonly BodyWarning[] },
  BodyIssue
> {
  const { observed, found, bodies, measurements } = given;
  const { missingLimb, earlier } = measurements;
  const kept: NamedObservation[] = [];
  const warnings: BodyWarning[] = [];
  const conditions = conditionsOf(measurements);
  for (const because of conditions) warnings.push({ type: "usual-weight", because });
  if (missingLimb !== undefined) {
    warnings.push({ type: "missing-limb", limb: missingLimb, share: limbFraction[missingLimb] });
  }
  if (earlier !== undefined && !observed.some(({ name }) => name === "earlier")) {
    warnings.push({ type: "measurement-not-used", measurement: "earlier" });
  }
  for (const item of observed) {
    const { name, value, observation } = item;
    const because = conditions.find((condition) => swollenBy[condition].has(name));
    if (because !== undefined) {
      warnings.push({ type: "measurement-set-aside", measurement: name, because });
      continue;
    }
    if (!found.model.covers(observation.quantity, found.value)) {
      warnings.push({ type: "measurement-not-used", measurement: name });
      continue;
    }
    if (name in quantityOfName && value !== undefined) {
      const measured = name as MeasuredName;
      const { low, high, refusedLow, refusedHigh } = fittedRange({ name: measured, bodies });
      if (measured !== "ageMonths" && (value < refusedLow || value > refusedHigh)) {
        const proposal = proposeUnit({ value, unit: measured === "armMm" ? "mm" : "cm", low, high });
        return err({
          type: "measurement-out-of-range",
          measurement: name,
          value,
          low: refusedLow,
          high: refusedHigh,
          ...(proposal === undefined ? {} : { proposal }),
        });
      }
      if (value < low || value > high) {
        warnings.push({ type: "measurement-extrapolated", measurement: name, value, low, high });
      }
    }
    kept.push(item);
  }
  return ok({ kept, warnings });
}
