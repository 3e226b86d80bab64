import type { VNode } from "preact";
import { useId } from "preact/hooks";
import { paperMessages } from "../../messages/paper.ts";

interface Props {
  readonly label: string;
  readonly hint: string;
  /** The file that is taken just now. */
  readonly file: string | undefined;
  /** Why the last one was not. */
  readonly refused: readonly string[];
  readonly onText: (file: string, text: string) => void;
  readonly onTakeOff: () => void;
}

/** A file of the site: chosen, taken or refused with its reason, and taken off again. */
export function FileChoice({ label, hint, file, refused, onText, onTakeOff }: Props): VNode {
  const id = useId();
  return (
    <div class="paper__file">
      <label for={id}>
        <b>{label}</b> <span id={`${id}-hint`}>{hint}</span>
      </label>
      {file === undefined ? (
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
        <button id={id} class="button" type="button" onClick={onTakeOff}>
          {paperMessages.takeOff(file)}
        </button>
      )}
      {refused.length > 0 && (
        <div role="alert" class="paper__refused">
          {refused.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </div>
      )}
    </div>
  );
}
