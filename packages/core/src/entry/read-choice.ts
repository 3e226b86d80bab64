import { err, ok, type Result } from "../result.ts";
import type { ChoiceField, EntryValues } from "./entry-field.ts";
import type { EntryIssue } from "./entry-issue.ts";

type Spellings<F extends ChoiceField> = Readonly<Record<EntryValues[F], readonly string[]>>;

// ISO/IEC 5218 codes sex as 1 male, 2 female; survey files use it as well as the letters.
const CHOICES: { readonly [F in ChoiceField]: Spellings<F> } = {
  sex: { f: ["f", "female", "girl", "2"], m: ["m", "male", "boy", "1"] },
  posture: { lying: ["lying", "supine"], "half-sitting": ["half-sitting"], seated: ["seated", "sitting"] },
  build: {
    "very-thin": ["very-thin"],
    thin: ["thin"],
    average: ["average"],
    heavy: ["heavy"],
    "very-heavy": ["very-heavy"],
  },
};

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
  const choices = Object.entries(CHOICES[field]) as [EntryValues[F], readonly string[]][];
  const found = choices.find(([, spellings]) => spellings.includes(word));
  if (found) return ok(found[0]);
  return err({ type: "not-a-choice", field, text: text.trim(), choices: choices.map(([choice]) => choice) });
}
