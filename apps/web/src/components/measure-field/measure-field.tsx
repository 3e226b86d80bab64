import type { VNode } from "preact";
import { messages } from "../../messages/index.ts";
import { isAgeField, isDateField, type TypedField } from "../../state/bedside-state.ts";

interface Props {
  readonly field: TypedField;
  readonly text: string;
  /** Stands in place of the hint: what this would buy. */
  readonly buys?: string | undefined;
  /** Whether it is shown how to measure this; absent where there is nothing to show. */
  readonly isHelped?: boolean | undefined;
  readonly onHelp?: (() => void) | undefined;
  /** Id of the element that says what is wrong, while something is. */
  readonly describedBy: string | undefined;
  readonly onType: (text: string) => void;
  readonly onLeave: () => void;
  /** Enter goes no further: the keyboard of a phone goes away. */
  readonly isLast?: boolean | undefined;
  /** Enter: on to the next field, or to what follows from the fields. */
  readonly onEnter: (() => void) | undefined;
}

/** One measurement to type, with its unit in sight. */
export function MeasureField({
  field,
  text,
  buys,
  isHelped,
  onHelp,
  describedBy,
  onType,
  onLeave,
  isLast,
  onEnter,
}: Props): VNode {
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
          {...(isDateField(field) ? ({ type: "date" } as const) : ({ type: "text" } as const))}
          inputMode={isAgeField(field) ? "text" : "decimal"}
          data-pad={isDateField(field) ? undefined : isAgeField(field) ? "age" : padOf(field)}
          placeholder=" "
          autocomplete="off"
          autocorrect="off"
          spellcheck={false}
          enterkeyhint={isLast ? "done" : "next"}
          maxLength={40}
          aria-invalid={describedBy !== undefined}
          aria-describedby={describedBy === undefined ? hintId : `${describedBy} ${hintId}`}
          onInput={(event) => onType(event.currentTarget.value)}
          onBlur={onLeave}
          onKeyDown={(event) => {
            if (event.key !== "Enter") return;
            event.preventDefault();
            // Done: the keyboard of a phone goes away and the doses come into sight.
            if (isLast) event.currentTarget.blur();
            onEnter?.();
          }}
        />
        {unit !== "" && <span aria-hidden="true">{unit}</span>}
      </div>
      <p id={hintId}>
        {buys === undefined ? hint : <b>{buys}</b>}
        {unit !== "" && <span class="unseen">, {messages.unitNames[unit]}</span>}
      </p>
      {onHelp !== undefined && (
        <button
          class="measure-field__how screen-only"
          type="button"
          aria-expanded={isHelped === true}
          aria-label={messages.howTo(label)}
          onClick={onHelp}
        >
          {messages.how}
        </button>
      )}
    </div>
  );
}

/** A length may be the sum of two parts, where the child is longer than the tape. */
function padOf(field: TypedField): "sum" | "number" {
  return field.startsWith("lengthCm") ? "sum" : "number";
}
