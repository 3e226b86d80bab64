import type { ComponentChildren, VNode } from "preact";
import { words } from "../messages/index.ts";
import type { Loaded } from "../state/department-state.ts";
import { ProblemNote } from "./problem-note.tsx";

interface Props<T> {
  readonly answer: Loaded<T> & { readonly again: () => void };
  readonly children: (value: T) => ComponentChildren;
}

/** What came of a question: on its way, there, or why not, with the way to ask again. */
export function Answer<T>({ answer, children }: Props<T>): VNode {
  switch (answer.state) {
    case "loading":
      return <p role="status">{words.loading}</p>;
    case "failed":
      return (
        <div class="stack">
          <ProblemNote problem={answer.problem} />
          <p>
            <button class="button" type="button" onClick={answer.again}>
              {words.again}
            </button>
          </p>
        </div>
      );
    case "ready":
      return <>{children(answer.value)}</>;
  }
}
