import type { VNode } from "preact";
import type { Report } from "../../later/compute-report.ts";
import type { Later } from "../../later/later.ts";
import { messages } from "../../messages/index.ts";
import type { FormularyIndex } from "../../state/formulary-index.ts";
import type { BedsideEvent } from "../../state/update.ts";
import { LookupGroup, lookupGroups } from "./lookup-group.tsx";
import { ProblemGroup } from "./problem-group.tsx";
import { searchUses } from "./search-uses.ts";

interface Props {
  readonly index: FormularyIndex;
  readonly later: Later | "failed" | undefined;
  readonly report: Report | undefined;
  readonly search: string;
  readonly turned: readonly string[];
  readonly printing: boolean;
  readonly send: (event: BedsideEvent) => void;
  readonly onReload: () => void;
}

/**
 * Every dose of this child, by problem, then equipment and normal signs. The problems and what is in them come from
 * the index, so that they stand before the doses are there, and nothing moves when those come.
 */
export function Sheet({ index, later, report, search, turned, printing, send, onReload }: Props): VNode {
  const found = searchUses(index, search);
  // Paper has the whole sheet, whatever was searched for on the screen.
  const problems = found === undefined || printing ? index.problems : found.problems;
  return (
    <section class="sheet" aria-labelledby="sheet-title" aria-busy={later === undefined}>
      <h2 id="sheet-title" class="unseen">
        {messages.sheet}
      </h2>
      {later === "failed" && (
        <div class="sheet__missing" role="alert">
          <p>{messages.dosesMissing}</p>
          <button class="button" type="button" onClick={onReload}>
            {messages.loadAgain}
          </button>
        </div>
      )}
      <search class="sheet__search screen-only">
        <input
          aria-label={messages.search}
          placeholder={messages.search}
          type="search"
          value={search}
          maxLength={60}
          autocomplete="off"
          spellcheck={false}
          enterkeyhint="search"
          onInput={(event) => send({ type: "searched", text: event.currentTarget.value })}
        />
        <p role="status">{found !== undefined && messages.found(found.count, found.shown)}</p>
      </search>
      {problems.map(({ problem, uses }) => {
        const isOpen =
          found === undefined
            ? (problem === index.problems[0]?.problem) !== turned.includes(problem)
            : found.problems.some((hit) => hit.problem === problem);
        return (
          <ProblemGroup
            key={problem}
            problem={problem}
            uses={uses}
            isOpen={isOpen}
            printing={printing}
            draft={!index.signed}
            later={typeof later === "object" ? later : undefined}
            report={report}
            // While a search is on, everything it found is open.
            onTurn={found === undefined ? () => send({ type: "turned", problem }) : undefined}
          />
        );
      })}
      {(found === undefined || printing) &&
        lookupGroups.map((group) => (
          <LookupGroup
            key={group}
            group={group}
            isOpen={turned.includes(group)}
            printing={printing}
            later={typeof later === "object" ? later : undefined}
            report={report}
            onTurn={() => send({ type: "turned", problem: group })}
          />
        ))}
    </section>
  );
}
