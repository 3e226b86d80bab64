import { createHash } from "node:crypto";
import {
  type CalibrationIssue,
  calibrateSite,
  type Measurements,
  type WeighedChild,
  writeSiteProfile,
} from "@steelyard/core/body";
import { ok, type Result } from "@steelyard/core/result";
import type { CaseRecord } from "@steelyard/records/case";
import type { FitAccuracy, FitAnswer } from "@steelyard/records/department";
import {
  crossValidateCalibration,
  fingerprintText,
  type HeldOutAccuracy,
} from "@steelyard/study/calibration";
import { daysBetween } from "./days-between.ts";

/** A weight taken later than this is of another child: fluid, fever and a week of illness (common practice). */
const LATEST_DAYS = 7;

/** The same children give the same figures. */
const SEED = 20_261_125;

/**
 * A site profile from the department's own weighed cases, by the same steps as `steelyard calibrate`, and how accurate the
 * estimates are without and with it on children that it was not made from. `createdOn`: the day, as 2026-11-25.
 */
export function fitCalibration(
  records: readonly CaseRecord[],
  {
    name,
    createdOn,
    software,
  }: { readonly name: string; readonly createdOn: string; readonly software: string },
): Result<Omit<FitAnswer, "more">, CalibrationIssue> {
  const { children, leftOut, dates } = weighedChildren(records);
  const calibration = calibrateSite(children);
  if (!calibration.ok) return calibration;
  const gain = crossValidateCalibration(children, { seed: SEED });
  if (calibration.value.leftOut > 0) {
    leftOut.push({ reason: "the body model cannot serve it", rows: calibration.value.leftOut });
  }
  const rowsSha256 = createHash("sha256").update(fingerprintText(children)).digest("hex");
  const profile = writeSiteProfile(calibration.value, {
    identity: { name, createdOn, rowsSha256, signed: false },
    leftOut,
    ...(dates && { dates }),
    software,
  });
  return ok({
    content: `${JSON.stringify(profile, undefined, 2)}\n`,
    label: `${name}, ${createdOn}`,
    rows: calibration.value.children,
    leftOut,
    ...(gain.ok
      ? {
          accuracy: {
            before: shown(gain.value.before),
            after: shown(gain.value.after),
            within10Gain: {
              value: gain.value.within10Gain.value,
              low: gain.value.within10Gain.low,
              high: gain.value.within10Gain.high,
            },
          },
        }
      : {}),
    shiftWithinPercent: calibration.value.shiftWithinPercent,
    childrenForOnePercent: calibration.value.childrenForOnePercent,
  });
}

function weighedChildren(records: readonly CaseRecord[]): {
  readonly children: readonly WeighedChild[];
  readonly leftOut: { reason: string; rows: number }[];
  readonly dates?: { readonly from: string; readonly to: string };
} {
  const children: WeighedChild[] = [];
  const days: string[] = [];
  const out = new Map<string, number>();
  const leave = (reason: string) => out.set(reason, (out.get(reason) ?? 0) + 1);
  // By time, so that the same cases give the same profile in whatever order they were read.
  const ordered = records.toSorted((a, b) => (a.startedAt + a.caseId < b.startedAt + b.caseId ? -1 : 1));
  for (const { startedAt, measurement, laterWeight } of ordered) {
    if (measurement === undefined || laterWeight === undefined) leave("no measurement or no later weight");
    else if (Math.abs(daysBetween(startedAt, laterWeight.on)) > LATEST_DAYS) {
      leave(`weighed more than ${LATEST_DAYS} days away`);
    } else {
      const { scaleKg: _, ...measurements } = measurement.measurements;
      children.push({ measurements: measurements as Measurements, weightKg: laterWeight.kg });
      days.push(startedAt.slice(0, 10));
    }
  }
  const [from, to] = [days[0], days.at(-1)];
  return {
    children,
    leftOut: Array.from(out, ([reason, rows]) => ({ reason, rows })),
    ...(from !== undefined && to !== undefined && { dates: { from, to } }),
  };
}

function shown(accuracy: HeldOutAccuracy): FitAccuracy {
  const { meanErrorPercent, rmspe, within10Percent, within20Percent, coveragePercent } = accuracy;
  return { meanErrorPercent, rmspe, within10Percent, within20Percent, coveragePercent };
}
