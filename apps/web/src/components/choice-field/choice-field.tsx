import type { VNode } from "preact";
import { messages } from "../../messages/index.ts";
import type { ChosenField } from "../../state/bedside-state.ts";

interface Props {
  readonly field: ChosenField;
  readonly value: string;
  readonly onChoose: (value: string) => void;
}

/** One of a few words: not knowing is an answer, and the one it starts with. */
export function ChoiceField({ field, value, onChoose }: Props): VNode {
  const { label, options } = messages.choices[field];
  return (
    <fieldset class="choice-field">
      <legend>{label}</legend>
      <div class="choice-field__options">
        {options.map(([option, word]) => (
          <label key={option}>
            <input
              type="radio"
              name={field}
              value={option}
              checked={value === option}
              onChange={() => onChoose(option)}
            />
            <span>{word}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
