import type { VNode } from "preact";
import { messages } from "../../messages/index.ts";

interface Props {
  readonly value: string;
  readonly onChoose: (value: string) => void;
}

/** Girl, boy or not known: not knowing is an answer, and the one it starts with. */
export function ChoiceField({ value, onChoose }: Props): VNode {
  return (
    <fieldset class="choice-field">
      <legend>{messages.fields.sex.label}</legend>
      <div class="choice-field__options">
        {Object.entries(messages.sexes).map(([sex, word]) => (
          <label key={sex}>
            <input
              type="radio"
              name="sex"
              value={sex}
              checked={value === sex}
              onChange={() => onChoose(sex)}
            />
            <span>{word}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
