import { describe, expect, it } from "vitest";
import {
  type BodyIssue,
  type BodyWarning,
  type Measurements,
  recogniseSlips,
  type Slip,
} from "../body/index.ts";
import { type EntryIssue, readEntry, readMeasurements } from "../entry/index.ts";
import { cautionBlock } from "./caution-block.ts";
import { describeBodyIssue } from "./describe-body-issue.ts";
import { describeBodyWarning } from "./describe-body-warning.ts";
import { describeEntryIssue } from "./describe-entry-issue.ts";
import { describeEntryNotice } from "./describe-entry-notice.ts";
import { describeRests } from "./describe-rests.ts";
import { describeCalibrationIssue, describeSiteProfileIssue } from "./describe-site-profile-issue.ts";
import { describeSlip } from "./describe-slip.ts";
import { draftBanner } from "./draft-banner.ts";
import { ENGLISH } from "./english.ts";

const plain = (text: string): string => text.replaceAll("\u00a0", " ");

function issueOf(...typed: Parameters<typeof readEntry>): string {
  const entry = readEntry(...typed);
  return entry.ok ? "no issue" : plain(describeEntryIssue(entry.error));
}

describe("describeEntryIssue()", () => {
  it.each([
    ["lengthCm", "", "No length was entered."],
    ["lengthCm", "abc", '"abc" is not a number: enter the length in cm, such as 136.'],
    ["lengthCm", "136 190", '"136 190" holds more than one number: enter one length in cm, such as 136.'],
    [
      "lengthCm",
      "1,360",
      '"1,360" has two readings, with the comma as decimal mark or between thousands: enter the length in cm, such as 136, with a decimal point. Did you mean 1.36 m (136 cm), 1.36 ft (41.45 cm) or 1,360 mm (136 cm)?',
    ],
    [
      "armMm",
      "19",
      "Arm circumference 19 mm cannot be right: every child's lies within 30 to 850 mm. Did you mean 19 cm (190 mm) or 19 in (482.6 mm)?",
    ],
    [
      "armMm",
      "1e9",
      "Arm circumference 1,000,000,000 mm cannot be right: every child's lies within 30 to 850 mm.",
    ],
    ["armMm", "-19", "Arm circumference must be more than 0 mm: −19 mm was entered."],
    ["armMm", "19 kg", '"kg" is not a unit of arm circumference: use mm, cm, m, in or ft.'],
    [
      "ageMonths",
      "9",
      'Age "9" has no unit: enter the age with its unit, such as 9 y or 18 mo. Did you mean 9 days, 9 weeks, 9 months or 9 years?',
    ],
    ["ageMonths", "30 y", "Age 30 years is outside what this tool is for: birth to 20 years."],
    ["ageMonths", "-1 mo", "Age cannot be negative: −1 months was entered."],
    ["sex", "x", '"x" is no sex: use f or m.'],
    ["oedema", "perhaps", '"perhaps" does not say whether there is oedema: use yes or no.'],
    [
      "earlierAgeMonths",
      "8",
      'Age at the earlier weight "8" has no unit: enter the age with its unit, such as 8 y or 16 mo. Did you mean 8 days, 8 weeks, 8 months or 8 years?',
    ],
  ] as const)("%s %j", (field, text, sentence) => {
    expect(issueOf(field, text)).toBe(sentence);
  });

  it("cuts a long text short", () => {
    expect(issueOf("lengthCm", "x".repeat(500)).length).toBeLessThan(120);
  });

  it("asks whether length and arm have changed places", () => {
    const read = readMeasurements({ lengthCm: "190", armMm: "136" });
    const [issue] = read.ok ? [] : read.error;
    expect(plain(describeEntryIssue(issue as EntryIssue))).toMatch(
      /Did you mean length 136 cm and arm circumference 190 mm\?$/,
    );
  });
});

describe("describeEntryNotice()", () => {
  it("says how a text was taken", () => {
    const read = readMeasurements({ standingHeightCm: "53 in" });
    const sentences = read.ok ? read.value.notices.map((notice) => plain(describeEntryNotice(notice))) : [];
    const half = readMeasurements({ earlierKg: "25" });
    expect(half.ok && half.value.notices.map((notice) => describeEntryNotice(notice))).toEqual([
      "Earlier weight was given but not used, as the age at the earlier weight is missing.",
    ]);
    expect(sentences).toEqual([
      'Standing height "53 in" was taken as 134.62 cm.',
      "Lying length was taken as 135.32 cm: standing height 134.62 cm + 0.7 cm.",
    ]);
  });
});

describe("describeBodyIssue() and describeBodyWarning()", () => {
  const out: BodyIssue = {
    type: "measurement-out-of-range",
    measurement: "armMm",
    value: 45,
    low: 110.123,
    high: 330,
  };
  it.each<[BodyIssue, string]>([
    [
      { type: "length-missing" },
      "Length is needed, or at least the age: nothing else alone gives a weight that can be relied on. Measure from crown to heel, lying flat.",
    ],
    [
      out,
      "Arm circumference 45 mm is outside the range that the body model serves, 110.12 to 330 mm. Measure again, or weigh the child and enter the scale weight.",
    ],
    [
      { ...out, proposal: { from: "cm", value: 450 } },
      "Arm circumference 45 mm is outside the range that the body model serves, 110.12 to 330 mm. Measure again, or weigh the child and enter the scale weight. Did you mean 45 cm (450 mm)?",
    ],
  ])("%j", (issue, sentence) => {
    expect(plain(describeBodyIssue(issue))).toBe(sentence);
  });

  it.each<[BodyWarning, string]>([
    [
      { type: "measurement-extrapolated", measurement: "lengthCm", value: 202, low: 50, high: 200 },
      "Length 202 cm is beyond what the body model has seen (50 to 200 cm): the weight is an extrapolation.",
    ],
    [
      { type: "measurement-extrapolated", measurement: "armMm", value: 350, low: 110, high: 330 },
      "Arm circumference 350 mm is beyond what the body model has seen (110 to 330 mm at this length): the weight is an extrapolation.",
    ],
    [
      {
        type: "measurement-conflict",
        measurement: "carerKg",
        value: 60,
        low: 22.4,
        high: 35.06,
        p: 0.0001,
        outcome: "left-out",
      },
      "Weight stated by the carer 60 kg does not fit the other measurements, which would expect 22.4 to 35.1 kg: it was left out. Measure again.",
    ],
    [
      {
        type: "measurement-conflict",
        measurement: "build",
        low: 22.4,
        high: 35.06,
        p: 0.0001,
        outcome: "left-out",
      },
      "Build does not fit the other measurements: it was left out.",
    ],
    [
      { type: "measurement-set-aside", measurement: "waistCm", because: "pregnant" },
      "Waist circumference was left out, as pregnancy adds to it.",
    ],
    [{ type: "usual-weight", because: "oedema" }, "Oedema: the estimate is of the weight without the fluid."],
    [
      { type: "missing-limb", limb: "lower-leg", share: 0.059 },
      "The missing lower leg and foot was taken off as 5.9 % of the body, by adult figures.",
    ],
    [
      { type: "length-from-segment", measurement: "ulnaCm", lengthCm: 133.16, sdCm: 3.9 },
      "Length was worked out from ulna length as 133.2 cm, with a standard error of 3.9 cm.",
    ],
    [
      { type: "no-length" },
      "No length: the weight goes by age, the range is wide, and no ideal weight can be given. Measure the length as soon as you can.",
    ],
    [
      { type: "measurement-not-used", measurement: "waistCm" },
      "Waist circumference was given but not used: the body model has no data on it at this length.",
    ],
    [
      { type: "no-girth" },
      "No circumference was given: build is unknown and the range is wide. Measuring the arm narrows it.",
    ],
    [
      { type: "scale-weight-unlikely", scaleKg: 80, low: 22.4, high: 60 },
      "Scale weight 80 kg is unlikely for these measurements, which predict 22.4 to 60 kg. Check the scale, its unit and the measurements.",
    ],
  ])("%j", (warning, sentence) => {
    expect(plain(describeBodyWarning(warning))).toBe(sentence);
  });
});

describe("what is said of a site profile", () => {
  it.each([
    [{ type: "unknown-format" }, ["It is no site profile: make one with steelyard calibrate."]],
    [
      {
        type: "faulty",
        faults: [
          { place: "", problem: { type: "not-an-object" } },
          { place: "population.shift", problem: { type: "out-of-range", value: 12, low: -4.2, high: 4.2 } },
          { place: "evidence.children", problem: { type: "out-of-range", value: 7, low: 20, high: 1e12 } },
        ],
      },
      [
        "the file must be an object.",
        "population.shift must be within −4.2 and 4.2, and is 12.",
        "evidence.children must be 20 or more, and is 7.",
      ],
    ],
  ] as const)("%j", (issue, sentences) => {
    expect(describeSiteProfileIssue(issue)).toEqual(sentences);
  });

  it("and of rows no calibration can be made of", () => {
    expect(plain(describeCalibrationIssue({ type: "incoherent-rows", within20: 31.4, least: 60 }))).toMatch(
      /^Even at its best the estimate comes within 20 % of the scale in 31 % of these children only, and 60 %/,
    );
  });
});

describe("the standing texts", () => {
  it("name what a weight rests on", () => {
    expect(describeRests(["lengthCm"])).toBe("Estimated from length.");
    expect(describeRests(["lengthCm", "armMm", "sex"])).toBe(
      "Estimated from length, arm circumference and sex.",
    );
    expect(describeRests(["scaleKg"])).toBe("Read from the scale.");
  });

  it("carry all five cautions and the draft banner", () => {
    expect(cautionBlock().lines).toEqual([
      "This is decision support for trained clinicians.",
      "Weigh the child as soon as you can.",
      "Local guidelines and a licensed professional's judgement come first.",
      "Check every dose independently.",
      "Not a certified medical device.",
    ]);
    expect(draftBanner().title).toContain("not signed");
  });

  it("come from the catalogue that is handed over", () => {
    const german = { ...ENGLISH, "body-issue.length-missing": () => "Die Länge fehlt." };
    expect(describeBodyIssue({ type: "length-missing" }, german)).toBe("Die Länge fehlt.");
  });
});

describe("describeSlip()", () => {
  const slipOf = (measurements: object) => recogniseSlips(measurements as Measurements)[0] as Slip;
  const girl = { lengthCm: 136, armMm: 190, waistCm: 58, scaleKg: 28 };

  it.each([
    [
      { ...girl, armMm: 7.5 },
      "Arm circumference 7.5 mm is unlikely: it may have been read in inches. Did you mean 7.5 in (190.5 mm)?",
    ],
    [
      { lengthCm: 53.5, armMm: 7.5 },
      "Length 53.5 cm and arm circumference 7.5 mm are unlikely: they may have been read in inches. Did you mean length 135.89 cm and arm circumference 190.5 mm?",
    ],
    [
      { ...girl, ageMonths: 9 },
      "Age 9 months is unlikely: it may have been given in years. Did you mean 9 years?",
    ],
    [
      { lengthCm: 75, armMm: 145, ageMonths: 120 },
      "Age 10 years is unlikely: it may have been given in months. Did you mean 10 months?",
    ],
    [
      { ...girl, scaleKg: 280 },
      "Scale weight 280 kg is unlikely: its decimal point or a nought may be out of place. Did you mean scale weight 28 kg?",
    ],
    [
      { ...girl, lengthCm: 163 },
      "Length 163 cm is unlikely: two of its digits may have changed places. Did you mean length 136 cm?",
    ],
    [
      { ...girl, lengthCm: 190, armMm: 136 },
      "Length 190 cm and arm circumference 136 mm are unlikely: they may have changed places. Did you mean length 136 cm and arm circumference 190 mm?",
    ],
    [
      { ...girl, waistCm: 190, armMm: 58 },
      "Arm circumference 58 mm and waist circumference 190 cm are unlikely: they may have changed places. Did you mean arm circumference 190 mm and waist circumference 58 cm?",
    ],
    [
      { ...girl, armMm: 318 },
      "Arm circumference 318 mm is unlikely beside the other measurements, and no common slip explains it. Check it again.",
    ],
  ])("%j", (measurements, sentence) => {
    expect(plain(describeSlip(slipOf(measurements)))).toBe(sentence);
  });

  it("leaves the question out where the proposal is a button", () => {
    expect(describeSlip(slipOf({ ...girl, armMm: 19 }), { proposalApart: true })).toMatch(
      /read in centimetres\.$/,
    );
  });
});
