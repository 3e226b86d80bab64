import type { VNode } from "preact";

interface Props {
  readonly id: string;
  readonly label: string;
  readonly hint: string;
  readonly text: string;
  /** What is wrong with it. */
  readonly issue: string | undefined;
  readonly onType: (text: string) => void;
}

/** A short code, as it is read out or typed off another screen. */
export function CodeField({ id, label, hint, text, issue, onType }: Props): VNode {
  return (
    <div class={`measure-field${issue === undefined ? "" : " measure-field--doubt"}`}>
      <label for={id}>{label}</label>
      <div class="measure-field__line">
        <input
          id={id}
          class="reader__code"
          value={text}
          maxLength={24}
          autocomplete="off"
          autocapitalize="characters"
          autocorrect="off"
          spellcheck={false}
          placeholder=" "
          aria-invalid={issue !== undefined}
          aria-describedby={`${id}-hint`}
          onInput={(event) => onType(event.currentTarget.value)}
        />
      </div>
      <p id={`${id}-hint`} role={issue === undefined ? undefined : "alert"}>
        {issue ?? hint}
      </p>
    </div>
  );
}
