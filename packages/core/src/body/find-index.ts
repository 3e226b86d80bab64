import { err, ok, type Result } from "../result.ts";
import type { BodyModel } from "./body-model.ts";
import type { IndexedModel } from "./indexed-model.ts";
import { lengthFromSegment } from "./length-from-segment.ts";
import { type MeasurementErrors, referenceTechnique } from "./measurement-errors.ts";
import type { MeasurementName, Measurements } from "./measurements.ts";
import { proposeUnit } from "./propose-unit.ts";
import { measuredValue, quantityValue } from "./quantity-value.ts";
import type { BodyIssue, BodyWarning } from "./weight-estimate.ts";

/** What the child's curves are read at: a length, or an age where there is no length. */
export interface FoundIndex {
  readonly model: IndexedModel;
  readonly name: MeasurementName;
  /** In the unit of the model. */
  readonly value: number;
  /** SD of its error beyond the technique of the fit, in the same unit. */
  readonly sd: number;
  readonly warnings: readonly BodyWarning[];
}

/** The index to read the curves at: the length, else a length from a segment of a limb, else the age. */
export function findIndex(given: {
  measurements: Measurements;
  model: BodyModel;
  errors: MeasurementErrors;
}): Result<FoundIndex, BodyIssue> {
  const { measurements, model, errors } = given;
  const { lengthCm, ageMonths } = measurements;
  if (lengthCm !== undefined) {
    const sd = lengthSdCm(measurements, errors);
    return within({ model: model.byLength, name: "lengthCm", value: lengthCm, sd, warnings: [] });
  }
  const segment = lengthFromSegment(measurements);
  if (segment?.ok) {
    const { from, ...length } = segment.value;
    const warnings = [{ type: "length-from-segment", measurement: from, ...length } as const];
    return within({ model: model.byLength, name: from, value: length.lengthCm, sd: length.sdCm, warnings });
  }
  if (segment !== undefined && ageMonths === undefined) return segment;
  if (ageMonths === undefined) return err({ type: "length-missing" });
  const value = quantityValue("ageMonths", ageMonths);
  return within({ model: model.byAge, name: "ageMonths", value, sd: 0, warnings: [{ type: "no-length" }] });
}

function within(found: FoundIndex): Result<FoundIndex, BodyIssue> {
  const { index } = found.model;
  if (found.value >= index.fittedLow && found.value <= index.fittedHigh) return ok(found);
  const name = index.quantity === "age" ? "ageMonths" : "lengthCm";
  const value = measuredValue(name, found.value);
  const low = measuredValue(name, index.low);
  const high = measuredValue(name, index.high);
  if (value < low || value > high) {
    const proposal = found.name === "lengthCm" ? proposeUnit({ value, unit: "cm", low, high }) : undefined;
    return err({
      type: "measurement-out-of-range",
      measurement: found.name,
      value,
      low,
      high,
      ...(proposal === undefined ? {} : { proposal }),
    });
  }
  const warning: BodyWarning = {
    type: "measurement-extrapolated",
    measurement: found.name,
    value,
    low: measuredValue(name, index.fittedLow),
    high: measuredValue(name, index.fittedHigh),
  };
  return ok({ ...found, warnings: [...found.warnings, warning] });
}

/** SD of the length beyond the technique of the fit; that technique where nothing is said of how it was taken. */
function lengthSdCm(
  { posture, people, lengthReadings = 1 }: Measurements,
  errors: MeasurementErrors,
): number {
  if (posture === undefined && people === undefined) return 0;
  const sds = errors.lengthSdCm[posture ?? "lying"];
  const sd = people === 1 ? sds.onePerson : sds.twoPeople;
  return Math.sqrt(Math.max(sd ** 2 / lengthReadings - referenceTechnique.lengthSdCm ** 2, 0));
}
