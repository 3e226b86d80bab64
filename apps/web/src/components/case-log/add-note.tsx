import type { VNode } from "preact";
import { useId, useState } from "preact/hooks";
import { cases } from "../../messages/cases.ts";

/** A line in the log in somebody's own words. */
export function AddNote({ onNote }: { readonly onNote: (text: string) => void }): VNode {
  const id = useId();
  const [text, setText] = useState("");
  return (
    <form
      class="add-note screen-only"
      onSubmit={(submit) => {
        submit.preventDefault();
        if (text.trim() === "") return;
        onNote(text.trim());
        setText("");
      }}
    >
      <label for={id}>{cases.noteLabel}</label>
      <input
        id={id}
        value={text}
        maxLength={500}
        autocomplete="off"
        aria-describedby={`${id}-hint`}
        onInput={({ currentTarget }) => setText(currentTarget.value)}
      />
      <button class="button" type="submit">
        {cases.addNote}
      </button>
      <p id={`${id}-hint`}>{cases.noteHint}</p>
    </form>
  );
}
