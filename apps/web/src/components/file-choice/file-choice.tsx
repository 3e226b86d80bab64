import type { VNode } from "preact";
import { useId } from "preact/hooks";
import "./file-choice.css";

interface Props {
  readonly label: string;
  readonly hint: string;
  /** The file that is taken just now, and the words on the button that takes it off. */
  readonly taken: { readonly takeOff: string } | undefined;
  /** Why the last one was not. */
  readonly refused: readonly string[];
  readonly onText: (file: string, text: string) => void;
  readonly onTakeOff: () => void;
}

/** A file of the site: chosen, taken or refused with its reason, and taken off again. */
export function FileChoice({ label, hint, taken, refused, onText, onTakeOff }: Props): VNode {
  const id = useId();
  return (
    <div class="file-choice">
      {/* A button is named by its own words, so the label is one of the field alone. */}
      <label for={taken === undefined ? id : undefined}>
        <b>{label}</b> <span id={`${id}-hint`}>{hint}</span>
      </label>
      {taken === undefined ? (
        <input
          id={id}
          type="file"
          accept=".json,application/json"
          aria-describedby={`${id}-hint`}
          onChange={({ currentTarget }) => {
            const [chosen] = currentTarget.files ?? [];
            if (chosen !== undefined) void chosen.text().then((text) => onText(chosen.name, text));
          }}
        />
      ) : (
        <button class="button" type="button" onClick={onTakeOff}>
          {taken.takeOff}
        </button>
      )}
      {refused.length > 0 && (
        <div role="alert" class="file-choice__refused">
          {refused.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </div>
      )}
    </div>
  );
}
