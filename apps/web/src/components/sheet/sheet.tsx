import type { VNode } from "preact";
import { messages } from "../../messages/index.ts";
import { LookupGroup, lookupGroups } from "./lookup-group.tsx";
import { ProblemGroup } from "./problem-group.tsx";
import { searchUses } from "./search-uses.ts";
import type { SheetProps } from "./sheet-props.ts";
import { ShortList } from "./short-list.tsx";

interface Props extends SheetProps {
  readonly onReload: () => void;
}

/**
 * Every dose of this child: the short list of this device, then by problem, then equipment and normal signs. The problems and what is
 * in them come from the index, so that they stand before the doses are there, and nothing moves when those come.
 */
export function Sheet({ onReload, ...props }: Props): VNode {
  const { index, later, report, search, turned, pinned, choices, printing, send } = props;
  const loaded = typeof later === "object" ? later : undefined;
  const found = searchUses(index, search);
  const lookups = found === undefined ? undefined : report && loaded?.searchLookups(report.lookups(), search);
  const foundLookups = lookups === undefined ? 0 : lookups.equipment.length + lookups.signs.length;
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
        <p role="status">
          {found !== undefined && messages.found(found.count + foundLookups, found.shown + foundLookups)}
        </p>
      </search>
      {found === undefined && !printing && <ShortList {...props} later={loaded} />}
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
            pinned={pinned}
            choices={choices}
            send={send}
            later={loaded}
            report={report}
            // While a search is on, everything it found is open.
            onTurn={found === undefined ? () => send({ type: "turned", problem }) : undefined}
          />
        );
      })}
      {lookupGroups.map((group) => {
        const only = printing ? undefined : lookups?.[group];
        if (found !== undefined && !printing && (only ?? []).length === 0) return null;
        return (
          <LookupGroup
            key={group}
            group={group}
            only={only}
            isOpen={found !== undefined || turned.includes(group)}
            printing={printing}
            later={loaded}
            report={report}
            onTurn={found === undefined ? () => send({ type: "turned", problem: group }) : undefined}
          />
        );
      })}
    </section>
  );
}
