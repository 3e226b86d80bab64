import type { VNode } from "preact";
import { useId } from "preact/hooks";

interface Props<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly options: readonly (readonly [value: T, word: string])[];
  readonly onChoose: (value: T) => void;
}

/** One of a few words. */
export function SelectLine<T extends string>({ label, value, options, onChoose }: Props<T>): VNode {
  const id = useId();
  return (
    <div class="text-field">
      <label for={id}>{label}</label>
      <select id={id} onChange={({ currentTarget }) => onChoose(currentTarget.value as T)}>
        {options.map(([own, word]) => (
          <option key={own} value={own} selected={own === value}>
            {word}
          </option>
        ))}
      </select>
    </div>
  );
}
