import type { VNode } from "preact";
import { messages } from "../../messages/index.ts";
import { formularyIndex } from "../../state/formulary-index.ts";
import type { FormularyIndex } from "../../state/index-formulary.ts";
import { FoldingGroup } from "./folding-group.tsx";
import { DoseLines, LinesToCome } from "./problem-group.tsx";
import type { SheetProps } from "./sheet-props.ts";

type Props = Omit<SheetProps, "search" | "later"> & {
  readonly later: Exclude<SheetProps["later"], "failed">;
};

/** The lines that somebody keeps at hand on this device, in the order of the sheet; nothing where there are none. */
export function ShortList(props: Props): VNode | null {
  const { index, pinned, turned, printing, later, report, send } = props;
  const problems = pinnedOf(index, pinned);
  const missing = notIn(index, pinned);
  if (problems.length === 0 && missing.length === 0) return null;
  const isOpen = !turned.includes("short-list");
  const uses = problems.flatMap((problem) => problem.uses);
  return (
    <FoldingGroup
      id="short-list"
      name={messages.shortList}
      count={messages.uses(uses.length)}
      isOpen={isOpen}
      // Paper has every line in its problem already.
      printing={false}
      onTurn={() => send({ type: "turned", problem: "short-list" })}
    >
      {() => (
        <>
          {missing.length > 0 && (
            <p class="problem-group__shared">
              {messages.notInFormulary(missing.map(nameOf).join("; "))}{" "}
              <button
                class="link"
                type="button"
                onClick={() => missing.map((line) => send({ type: "pinned", line }))}
              >
                {messages.takeOut}
              </button>
            </p>
          )}
          {later === undefined || report === undefined ? (
            <LinesToCome uses={uses} />
          ) : (
            <DoseLines
              {...props}
              lines={problems.flatMap(({ problem }) =>
                report.linesOf(problem).filter(({ id }) => pinned.includes(id)),
              )}
              draft={!index.signed}
              isOpen={isOpen}
              printing={printing}
              later={later}
            />
          )}
        </>
      )}
    </FoldingGroup>
  );
}

/** Kept at the top, and not in this formulary: another one had it. */
function notIn({ problems }: FormularyIndex, pinned: readonly string[]): readonly string[] {
  return pinned.filter((line) => !problems.some(({ uses }) => uses.some(({ id }) => id === line)));
}

/** As the draft of the page calls it, or by its id. */
function nameOf(line: string): string {
  const use = formularyIndex.problems.flatMap(({ uses }) => uses).find(({ id }) => id === line);
  return use === undefined ? line : `${use.medicine} ${use.use}`;
}

function pinnedOf({ problems }: FormularyIndex, pinned: readonly string[]): FormularyIndex["problems"] {
  return problems
    .map(({ problem, uses }) => ({ problem, uses: uses.filter(({ id }) => pinned.includes(id)) }))
    .filter(({ uses }) => uses.length > 0);
}
