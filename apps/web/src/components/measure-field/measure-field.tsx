import { isAge } from "@steelyard/core/entry";
import type { VNode } from "preact";
import { messages } from "../../messages/index.ts";
import type { TypedField } from "../../state/bedside-state.ts";

interface Props {
  readonly field: TypedField;
  readonly text: string;
  /** Id of the element that says what is wrong, while something is. */
  readonly describedBy: string | undefined;
  readonly onType: (text: string) => void;
  readonly onLeave: () => void;
  /** Enter: on to the next field, or done. */
  readonly onEnter: (() => void) | undefined;
}

/** One measurement to type, with its unit in sight. */
export function MeasureField({ field, text, describedBy, onType, onLeave, onEnter }: Props): VNode {
  const { label, unit, hint } = messages.fields[field];
  const hintId = `${field}-hint`;
  return (
    <div class={`measure-field${describedBy === undefined ? "" : " measure-field--doubt"}`}>
      <label for={field}>{label}</label>
      <div class="measure-field__line">
        <input
          id={field}
          name={field}
          value={text}
          inputMode={isAge(field) ? "text" : "decimal"}
          placeholder=" "
          autocomplete="off"
          autocorrect="off"
          spellcheck={false}
          enterkeyhint={onEnter === undefined ? "done" : "next"}
          maxLength={40}
          aria-invalid={describedBy !== undefined}
          aria-describedby={describedBy === undefined ? hintId : `${describedBy} ${hintId}`}
          onInput={(event) => onType(event.currentTarget.value)}
          onBlur={onLeave}
          onKeyDown={(event) => {
            if (event.key !== "Enter") return;
            event.preventDefault();
            // Done: the keyboard of a phone goes away and the doses come into sight.
            if (onEnter === undefined) event.currentTarget.blur();
            else onEnter();
          }}
        />
        {unit !== "" && <span aria-hidden="true">{unit}</span>}
      </div>
      <p id={hintId}>
        {hint}
        {unit !== "" && <span class="unseen">, {messages.unitNames[unit]}</span>}
      </p>
    </div>
  );
}
