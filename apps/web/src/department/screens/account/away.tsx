import type { VNode } from "preact";
import type { ApiProblem } from "../../api/api-problem.ts";
import { ProblemNote } from "../../components/problem-note.tsx";
import { words } from "../../messages/index.ts";

interface Props {
  readonly problem: ApiProblem;
  readonly onAgain: () => void;
}

/** The page without its server: says so, and where weights and doses are. */
export function Away({ problem, onAgain }: Props): VNode {
  return (
    <section class="stack narrow" aria-labelledby="away">
      <h2 id="away">{words.account.awayTitle}</h2>
      <p>{words.account.away}</p>
      <ProblemNote problem={problem} />
      <p>
        <button class="button" type="button" onClick={onAgain}>
          {words.again}
        </button>
      </p>
      <ToBedside />
    </section>
  );
}

export function ToBedside(): VNode {
  return (
    <p class="soft">
      {words.account.bedsideHint} <a href="/">{words.account.bedside}</a>
    </p>
  );
}
