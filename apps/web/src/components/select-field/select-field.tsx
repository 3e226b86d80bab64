import type { VNode } from "preact";
import { messages } from "../../messages/index.ts";
import type { ChosenField } from "../../state/bedside-state.ts";

interface Props {
  readonly field: ChosenField;
  readonly value: string;
  readonly onChoose: (value: string) => void;
}

/** One of a few words in one line: for what is asked every time and seldom changes. */
export function SelectField({ field, value, onChoose }: Props): VNode {
  const { label, options } = messages.choices[field];
  return (
    <div class={`select-field${value === "" ? "" : " select-field--chosen"}`}>
      <label for={field}>{label}</label>
      <select id={field} name={field} onChange={(event) => onChoose(event.currentTarget.value)}>
        {options.map(([option, word]) => (
          <option key={option} value={option} selected={option === value}>
            {word}
          </option>
        ))}
      </select>
    </div>
  );
}
