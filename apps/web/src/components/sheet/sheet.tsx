import type { ProblemId, SheetLine } from "@steelyard/core/dosing";
import { describeProblem } from "@steelyard/core/wording";
import type { VNode } from "preact";
import { messages } from "../../messages/index.ts";
import { DoseLine } from "../dose-line/dose-line.tsx";
import { sharedSentences } from "../dose-line/line-flags.ts";

interface Props {
  readonly lines: readonly SheetLine[];
  readonly draft: boolean;
  readonly printing: boolean;
}

/** Every dose of this child, by problem. */
export function Sheet({ lines, draft, printing }: Props): VNode {
  const groups = groupByProblem(lines);
  const shared = sharedSentences(lines);
  const sharedSet = new Set(shared.map(({ sentence }) => sentence));
  return (
    <section class="sheet" aria-labelledby="sheet-title">
      <h2 id="sheet-title" class="unseen">
        {messages.sheet}
      </h2>
      {shared.map(({ sentence, isQuiet }) => (
        <p key={sentence} class={`sheet__shared${isQuiet ? " sheet__shared--quiet" : ""}`}>
          {sentence}
        </p>
      ))}
      <nav class="sheet__problems screen-only" aria-label={messages.problems}>
        {groups.map(([problem]) => (
          <a key={problem} href={`#${problem}`}>
            {describeProblem(problem)}
          </a>
        ))}
      </nav>
      {groups.map(([problem, members]) => (
        <section key={problem} class="sheet__group" aria-labelledby={problem}>
          <h3 id={problem} tabIndex={-1}>
            {describeProblem(problem)}
          </h3>
          <ul>
            {members.map((line) => (
              <li key={line.id}>
                <DoseLine line={line} draft={draft} shared={sharedSet} printing={printing} />
              </li>
            ))}
          </ul>
        </section>
      ))}
    </section>
  );
}

/** In the order of the formulary: the order of the first line of each problem. */
function groupByProblem(
  lines: readonly SheetLine[],
): readonly (readonly [ProblemId, readonly SheetLine[]])[] {
  const groups = new Map<ProblemId, SheetLine[]>();
  for (const line of lines) {
    const group = groups.get(line.problem);
    if (group === undefined) groups.set(line.problem, [line]);
    else group.push(line);
  }
  return [...groups];
}
