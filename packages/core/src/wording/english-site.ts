import type { CalibrationIssue, FieldFault, NextMeasurement, SiteProfileIssue } from "../body/index.ts";
import { formatNumber } from "../units/index.ts";

type Girth = NextMeasurement["measurement"];
type ByType<T extends { readonly type: string }> = { [V in T as V["type"]]: (value: V) => string };

/** One language of what is said of a site's calibration, and of what to measure next. */
export interface SiteCatalogue {
  readonly calibration: ByType<CalibrationIssue>;
  readonly profile: ByType<Exclude<SiteProfileIssue, { readonly type: "faulty" }>>;
  readonly fault: ByType<FieldFault["problem"]>;
  /** The file as a whole, where a fault has no place within it. */
  readonly wholeFile: string;
  readonly nextMeasurement: (next: { readonly girth: string; readonly percent: string }) => string;
  readonly girth: Readonly<Record<Girth, string>>;
}

const n = (value: number): string => formatNumber(value);
const percent = (value: number): string => formatNumber(Math.round(value));

/** The English sentences; the source that other languages are translated from. */
export const ENGLISH_SITE: SiteCatalogue = {
  calibration: {
    "too-few-children": ({ children, fewest }) =>
      `A calibration needs at least ${n(fewest)} children who were measured and weighed, and there ${
        children === 1 ? "is 1" : `are ${n(children)}`
      }: fewer say less than is known without them. A hundred are better.`,
    "incoherent-rows": ({ within20, least }) =>
      `Even at its best the estimate comes within 20\u00a0% of the scale in ${percent(within20)}\u00a0% of these children only, and ${percent(least)}\u00a0% is the least of any population. Columns may have changed places, a unit may be wrong, or the weights may be other children's: mend the rows and try again.`,
  },
  profile: {
    "unknown-format": ({ formatVersion }) =>
      formatVersion === undefined
        ? "It is no site profile: make one with steelyard calibrate."
        : `It is a site profile of format ${n(formatVersion)}, which is later than this software: update the software, or calibrate again.`,
    "other-model": ({ profileModel, currentModel }) =>
      `It was made for body model ${profileModel}, and this is body model ${currentModel}: its shift means something else here. Calibrate again from the rows.`,
  },
  fault: {
    missing: () => "is missing",
    "not-an-object": () => "must be an object",
    "not-a-list": () => "must be a list",
    "not-a-text": () => "must be a text of 1 to 200 characters",
    "not-a-date": () => "must be a date such as 2026-11-25",
    "not-true-or-false": () => "must be true or false",
    "not-a-sha256": () => "must be 64 hexadecimal digits",
    "not-a-number": () => "must be a number",
    "not-a-whole-number": () => "must be a whole number",
    "out-of-range": ({ value, low, high }) =>
      `must be ${high >= 1e12 ? `${n(low)} or more` : `within ${n(low)} and ${n(high)}`}, and is ${n(value)}`,
    unexpected: ({ value, expected }) => `must be ${expected}, and is ${value}`,
  },
  wholeFile: "the file",
  nextMeasurement: ({ girth, percent }) =>
    `Measuring the ${girth} would narrow the range to about ±${percent}\u00a0%.`,
  girth: { armMm: "arm", waistCm: "waist", thighCm: "thigh", calfCm: "calf", headCm: "head" },
};
