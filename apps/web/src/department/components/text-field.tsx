import type { ComponentChildren, VNode } from "preact";
import { useId } from "preact/hooks";

interface Props {
  readonly label: string;
  readonly value: string;
  readonly onType: (text: string) => void;
  readonly hint?: string | undefined;
  /** What is wrong with what was typed. */
  readonly fault?: string | undefined;
  readonly type?: "text" | "password" | "date" | "search";
  readonly autocomplete?: string;
  readonly inputMode?: "text" | "decimal" | "numeric";
  readonly maxLength?: number;
  readonly unit?: ComponentChildren;
  readonly isReadOnly?: boolean;
}

/** One line to type, with its label in sight, its hint and what is wrong with it. */
export function TextField({
  label,
  value,
  onType,
  hint,
  fault,
  type = "text",
  autocomplete = "off",
  inputMode,
  maxLength = 120,
  unit,
  isReadOnly = false,
}: Props): VNode {
  const id = useId();
  const described = [fault && `${id}-fault`, hint && `${id}-hint`].filter(Boolean).join(" ");
  return (
    <div class="text-field">
      <label for={id}>{label}</label>
      <div class="text-field__line">
        <input
          id={id}
          {...({ type } as { type: "text" })}
          value={value}
          autocomplete={autocomplete}
          autocapitalize="none"
          spellcheck={false}
          inputMode={inputMode}
          maxLength={type === "date" ? undefined : maxLength}
          readOnly={isReadOnly}
          aria-invalid={fault !== undefined}
          aria-describedby={described === "" ? undefined : described}
          onInput={({ currentTarget }) => onType(currentTarget.value)}
        />
        {unit !== undefined && <span>{unit}</span>}
      </div>
      {fault !== undefined && (
        <p id={`${id}-fault`} class="text-field__fault">
          {fault}
        </p>
      )}
      {hint !== undefined && (
        <p id={`${id}-hint`} class="text-field__hint">
          {hint}
        </p>
      )}
    </div>
  );
}
