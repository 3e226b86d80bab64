import type { CombinedReadings, RepeatedField } from "@steelyard/core/entry";
import { formatNumber } from "@steelyard/core/units";
import type { ChosenField, OptionalField, TypedField } from "../state/bedside-state.ts";
import type { NextHint } from "../state/next-hint.ts";
import type { ScreenId } from "../state/screens.ts";
import type { FormularyInUse, RunningVersions } from "../state/site-rules.ts";

type ReadingsSaid = CombinedReadings & {
  readonly field: RepeatedField;
  readonly numbers: readonly number[];
};

/**
 * Every word of the screen itself. Sentences about a child (issues, notices, warnings, working) come from
 * `@steelyard/core/wording`, which the command line and the paper share.
 */
export const en = {
  name: "Steelyard",
  screens: {
    bedside: "Bedside",
    reader: "Second reader",
    casebook: "Casebook",
    practice: "Practice",
    study: "Study",
    paper: "Paper",
    site: "This site",
  } satisfies Record<ScreenId, string>,
  /** What one goes there for, in the menu. */
  screenFor: {
    bedside: "Weight and doses from two measurements",
    reader: "Another person measures, blind",
    casebook: "Cases on this device, later weights, export",
    practice: "Read the tape on invented children",
    study: "Judge methods against the scale, from a file",
    paper: "True-scale strips and grids to print",
    site: "Its formulary and calibration, for every dose and weight here",
  } satisfies Record<ScreenId, string>,
  windowTitle: (screen: string): string => `Steelyard ${screen}`,
  menuName: "Screens",
  menu: (screen: string): string => `${screen}, other screens`,
  screenComing: "Loading.",
  screenMissing: "This screen could not be loaded.",
  nextChild: "New child",
  bringBack: "Bring back the last child",
  carriedOver: "These values were typed before the page was reloaded. Is this still the same child?",
  entry: "Measurements",
  fields: {
    lengthCm: { label: "Length", unit: "cm", hint: "crown to heel" },
    armMm: { label: "Arm, mid-upper", unit: "mm", hint: "around, relaxed" },
    ageMonths: { label: "Age", unit: "", hint: "as 9 y, 18 mo or 3 w" },
    waistCm: { label: "Waist", unit: "cm", hint: "above the hip bones" },
    thighCm: { label: "Thigh", unit: "cm", hint: "around, halfway" },
    calfCm: { label: "Calf", unit: "cm", hint: "around, at its widest" },
    headCm: { label: "Head", unit: "cm", hint: "around, at its widest" },
    carerKg: { label: "Weight, carer’s word", unit: "kg", hint: "counts as an estimate" },
    earlierKg: { label: "Weight, earlier scale", unit: "kg", hint: "with its date, or the age then" },
    earlierDate: { label: "Date of that weight", unit: "", hint: "in place of the age then" },
    birthDate: { label: "Date of birth", unit: "", hint: "in place of the age" },
    lengthCm2: { label: "Length, second reading", unit: "cm", hint: "tape taken off and laid anew" },
    armMm2: { label: "Arm, second reading", unit: "mm", hint: "tape taken off and laid anew" },
    lengthCm3: { label: "Length, third reading", unit: "cm", hint: "the middle one of three counts" },
    armMm3: { label: "Arm, third reading", unit: "mm", hint: "the middle one of three counts" },
    kneeHeightCm: { label: "Knee height", unit: "cm", hint: "heel to top of the bent knee" },
    tibiaCm: { label: "Shin bone", unit: "cm", hint: "inner knee joint to inner ankle" },
    ulnaCm: { label: "Forearm bone", unit: "cm", hint: "elbow to wrist bone, needs the age" },
    earlierAgeMonths: { label: "Age at that weight", unit: "", hint: "as 9 y, 18 mo or 3 w" },
    scaleKg: { label: "Weight, scale", unit: "kg", hint: "read now, replaces the estimate" },
    burnPercent: { label: "Burnt skin", unit: "%", hint: "of the body surface, reddening not counted" },
  } satisfies Record<TypedField, { label: string; unit: string; hint: string }>,
  /** In the order shown: the value, and its word. */
  choices: {
    sex: {
      label: "Sex",
      options: [
        ["", "not known"],
        ["f", "girl"],
        ["m", "boy"],
      ],
    },
    posture: {
      label: "Child",
      options: [
        ["", "position not said"],
        ["lying", "lying"],
        ["half-sitting", "half sitting"],
        ["seated", "seated"],
      ],
    },
    people: {
      label: "Measured by",
      options: [
        ["", "not said"],
        ["1", "one person"],
        ["2", "two people"],
      ],
    },
    build: {
      label: "Build by eye",
      options: [
        ["", "not judged"],
        ["very-thin", "very thin"],
        ["thin", "thin"],
        ["average", "average"],
        ["heavy", "heavy"],
        ["very-heavy", "very heavy"],
      ],
    },
    oedema: {
      label: "Oedema",
      options: [
        ["", "no"],
        ["yes", "yes"],
      ],
    },
    missingLimb: {
      label: "Missing limb",
      options: [
        ["", "none"],
        ["hand", "hand"],
        ["forearm", "forearm and hand"],
        ["arm", "arm"],
        ["foot", "foot"],
        ["lower-leg", "lower leg and foot"],
        ["leg", "leg"],
      ],
    },
    pregnant: {
      label: "Pregnant",
      options: [
        ["", "no"],
        ["yes", "yes"],
      ],
    },
  } satisfies Record<ChosenField, { label: string; options: readonly (readonly [string, string])[] }>,
  unitNames: { cm: "in centimetres", mm: "in millimetres", kg: "in kilograms" } as Record<string, string>,
  take: (proposal: string): string => `Take ${proposal}`,
  /** What is on the button, and what it does. */
  ask: {
    sex: ["Sex", "Add sex"],
    ageMonths: ["Age", "Add age"],
    waistCm: ["Waist", "Add waist"],
    thighCm: ["Thigh", "Add thigh"],
    calfCm: ["Calf", "Add calf"],
    headCm: ["Head", "Add head"],
    lengthCm2: ["Second reading", "Add a second reading"],
    lengthCm3: ["Third reading", "Add a third reading"],
    kneeHeightCm: ["Cannot be laid straight", "Add a part of the body: cannot be laid straight"],
    build: ["Build by eye", "Add build by eye"],
    carerKg: ["Carer’s word", "Add weight, carer’s word"],
    earlierKg: ["Earlier weight", "Add an earlier scale weight"],
    oedema: ["Oedema, limb, pregnancy", "Add oedema, a missing limb or pregnancy"],
    scaleKg: ["Scale", "Add weight, scale"],
    burnPercent: ["Burn", "Add the burnt share of the body surface"],
  } satisfies Record<OptionalField, readonly [string, string]>,
  secondReader: "Second reader",
  askAll: ["More", "Add more"],
  addMore: "What else is known",
  narrows: ({ percent }: NextHint): string => `narrows to ±${percent}\u00a0%`,
  narrowsHere: ({ percent }: NextHint): string => `range to ±${percent}\u00a0%`,
  /** On the button of a field, and what it does. */
  how: "How",
  howTo: (name: string): string => `How to measure: ${name}`,
  sumOfParts: ({ parts, sum }: { parts: string; sum: string }): string => `${parts} = ${sum}\u00a0cm.`,
  readings: ({ field, numbers, value, spread, limit, needsThird }: ReadingsSaid): string => {
    const unit = field === "lengthCm" ? "cm" : "mm";
    const apart = `${formatNumber(spread)}\u00a0${unit} apart`;
    return needsThird
      ? `The readings are ${apart}; careful ones differ by ${formatNumber(limit)}\u00a0${unit} at most. Read a third time: the middle one counts.`
      : `${numbers.length === 2 ? "Two readings" : "Three readings"}, ${apart}: ${formatNumber(value)}\u00a0${unit} counts.`;
  },
  notABirthDate: "No child was born on that day. Is the year right?",
  ageOfBirthDate: (months: number): string =>
    months < 24
      ? `${formatNumber(Math.round(months * 10) / 10)} months old.`
      : `${formatNumber(Math.floor(months / 12))} years ${formatNumber(Math.floor(months % 12))} months old.`,
  ageBeforeBirthDate: "The age that was typed counts; the date of birth is left out.",
  notAnEarlierDate: "That day is still to come.",
  earlierNeedsAge: "An earlier weight needs the age now as well.",
  earlierBeforeBirth: "That day is before the birth.",
  weight: "Weight",
  total: "Total weight",
  ideal: "Ideal weight",
  beam: { ideal: "ideal", carer: "carer’s word", earlier: "earlier" },
  backToTop: "to the measurements",
  idealUnknown: "not known without a length",
  range: "95 % range",
  rangeOfScale: "read from a scale",
  to: "to",
  kg: "kg",
  noWeightYet: "No weight yet",
  sheet: "Doses",
  search: "Find a medicine, use or equipment",
  found: (count: number, shown: number): string =>
    count === 0
      ? "Nothing on the sheet has these words."
      : count > shown
        ? `${count} found, the first ${shown} shown: type more.`
        : `${count} found.`,
  uses: (count: number): string => (count === 1 ? "1 use" : `${count} uses`),
  doseComing: "being computed",
  dosesMissing: "The doses could not be loaded.",
  loadAgain: "Load the page again",
  lookup: {
    groups: { equipment: "Equipment", signs: "Normal signs" },
  },
  shortList: "Short list",
  firstSteps: {
    title: "Two measurements first",
    steps: [
      {
        title: "Length",
        text: "Child flat on the back, legs straight. Tape on the bed beside the child, from the crown to the heel, not the toes. In centimetres.",
      },
      {
        title: "Arm",
        text: "Bare upper arm, halfway between the tip of the shoulder and the elbow, hanging relaxed. Tape snug on the skin, not indenting it. In millimetres.",
      },
    ],
    end: "Weight and doses appear as you type. Length alone gives a weight too, with a wider range. Nothing leaves this device.",
  },
  versions: ({ software, model, formulary, formularySigned, own, site }: RunningVersions): string =>
    `Steelyard ${software}, body model ${model}, formulary ${formulary} (${
      formularySigned
        ? `signed by ${(own?.signers ?? []).map(({ name, role, date }) => `${name}, ${role}, on ${date}`).join("; ")}`
        : "draft, not signed"
    }${own === undefined ? "" : `; fingerprint ${own.fingerprint.slice(0, 12)}`}), ${
      site === undefined
        ? "not calibrated for this site"
        : `calibrated to ${site.name} on ${site.createdOn} (${site.signed ? "signed" : "not signed"})`
    }.`,
  otherModel: ({ name, model }: { readonly name: string; readonly model: string }): string =>
    `The calibration to ${name} was made for body model ${model}, which is not the one that runs here. It is not used: the range is that of a site without one. Make it anew.`,
  lostFormulary: ({ version, why }: NonNullable<FormularyInUse["lost"]>): string =>
    `The formulary of this site (${version}) ${
      why === "unfit" ? "does not fit this version of Steelyard" : "can no longer be read on this device"
    } and is not used: doses are those of the draft that comes with the page. Load it again at “This site”.`,
  rulesWait: "Another formulary or calibration of the site is ready: it is used from the next child on.",
  takeOut: "Take out",
  notInFormulary: (names: string): string => `In your short list, and not in the formulary in use: ${names}.`,
  spoken: ({ total, range, ideal }: { total: string; range: string; ideal: string | undefined }): string =>
    `Total weight ${total}, 95 % range ${range}.${ideal === undefined ? "" : ` Ideal weight ${ideal}.`} The doses stand below, by problem.`,
  language: {
    choose: "Language of the page",
    missing: (name: string): string => `${name} could not be loaded. Look again with the network on.`,
    formulary: "Names, uses and cautions of medicines come from the formulary and stay in its language.",
  },
  offlineReady: "Ready to work without a network.",
  updateWaits: "A newer version is ready and starts when the page is next opened.",
} as const;
