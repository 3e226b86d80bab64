import { err, ok, type Result } from "../result.ts";
import { millimetres } from "../units/index.ts";
import type { ChoiceField, EntryField, EntryValues } from "./entry-field.ts";
import type { EntryIssue } from "./entry-issue.ts";

interface Choice<T> {
  readonly value: T;
  /** Spellings a person may type, lower case with hyphens; the first is the one that is offered. */
  readonly spellings: readonly string[];
}

const words = <T extends string>(...values: readonly T[]): readonly Choice<T>[] =>
  values.map((value) => ({ value, spellings: [value] }));

const yesOrNo: readonly Choice<boolean>[] = [
  { value: true, spellings: ["yes", "y", "true", "1"] },
  { value: false, spellings: ["no", "n", "false", "0"] },
];

/** More than nine readings of one length are a study, not a child in need. */
const counts: readonly Choice<number>[] = Array.from({ length: 9 }, (_, i) => ({
  value: i + 1,
  spellings: [String(i + 1)],
}));

// ISO/IEC 5218 codes sex as 1 male, 2 female; survey files use it as well as the letters.
const CHOICES: { readonly [F in ChoiceField]: readonly Choice<EntryValues[F]>[] } = {
  sex: [
    { value: "f", spellings: ["f", "female", "girl", "2"] },
    { value: "m", spellings: ["m", "male", "boy", "1"] },
  ],
  posture: [
    { value: "lying", spellings: ["lying", "supine"] },
    ...words("half-sitting"),
    { value: "seated", spellings: ["seated", "sitting"] },
  ],
  people: [
    { value: 1, spellings: ["1", "one"] },
    { value: 2, spellings: ["2", "two"] },
  ],
  lengthReadings: counts,
  armReadings: counts,
  // The steps that tapes are marked in.
  armStepMm: [1, 2, 5, 10].map((step) => ({
    value: millimetres(step),
    spellings: [`${step}`, `${step}mm`, `${step}-mm`],
  })),
  build: words("very-thin", "thin", "average", "heavy", "very-heavy"),
  missingLimb: words("hand", "forearm", "arm", "foot", "lower-leg", "leg"),
  oedema: yesOrNo,
  pregnant: yesOrNo,
};

export function isChoice(field: EntryField): field is ChoiceField {
  return field in CHOICES;
}

/** One of the words a field allows, from what a person typed; case and spaces or hyphens do not matter. */
export function readChoice<F extends ChoiceField>(
  field: F,
  text: string,
): Result<EntryValues[F], EntryIssue> {
  const word = text
    .trim()
    .toLowerCase()
    .replaceAll(/[\s_-]+/g, "-");
  if (word === "") return err({ type: "empty", field });
  const choices: readonly Choice<EntryValues[F]>[] = CHOICES[field];
  const found = choices.find(({ spellings }) => spellings.includes(word));
  if (found) return ok(found.value);
  const offered = choices.map(({ spellings }) => spellings[0] as string);
  return err({ type: "not-a-choice", field, text: text.trim(), choices: offered });
}
