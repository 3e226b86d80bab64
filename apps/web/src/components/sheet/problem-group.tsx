import type { ProblemId, SheetLine } from "@steelyard/core/dosing";
import { describeProblem } from "@steelyard/core/wording";
import type { VNode } from "preact";
import type { Report } from "../../later/compute-report.ts";
import type { Later } from "../../later/later.ts";
import { messages } from "../../messages/index.ts";
import { language } from "../../messages/language.ts";
import type { IndexedUse } from "../../state/index-formulary.ts";
import type { BedsideEvent } from "../../state/update.ts";
import { FormularyText } from "../formulary-text/formulary-text.tsx";
import { FoldingGroup } from "./folding-group.tsx";

interface Props {
  readonly problem: ProblemId;
  /** The uses to show, all of the problem or those that were searched for. */
  readonly uses: readonly IndexedUse[];
  readonly isOpen: boolean;
  readonly printing: boolean;
  readonly draft: boolean;
  readonly pinned: readonly string[];
  readonly choices: Readonly<Record<string, string>>;
  readonly send: (event: BedsideEvent) => void;
  readonly later: Later | undefined;
  readonly report: Report | undefined;
  /** Absent while it can only be open. */
  readonly onTurn: (() => void) | undefined;
}

/** One problem: a heading that opens to its doses. */
export function ProblemGroup(props: Props): VNode {
  const { problem, uses, isOpen, printing, onTurn } = props;
  return (
    <FoldingGroup
      id={problem}
      name={describeProblem(problem, language?.messages)}
      count={messages.uses(uses.length)}
      isOpen={isOpen}
      printing={printing}
      onTurn={onTurn}
    >
      {() => <Lines {...props} />}
    </FoldingGroup>
  );
}

function Lines(props: Props): VNode {
  const { problem, uses, later, report } = props;
  if (later === undefined || report === undefined) return <LinesToCome uses={uses} />;
  const shown = new Set(uses.map(({ id }) => id));
  const lines = report.linesOf(problem).filter(({ id }) => shown.has(id));
  return <DoseLines {...props} lines={lines} later={later} />;
}

interface LinesProps extends Pick<Props, "isOpen" | "printing" | "draft" | "pinned" | "choices" | "send"> {
  readonly lines: readonly SheetLine[];
  readonly later: Later;
}

/** Doses that are there, below what holds for most of them. */
export function DoseLines({
  lines,
  isOpen,
  printing,
  draft,
  pinned,
  choices,
  send,
  later,
}: LinesProps): VNode {
  const shared = later.sharedSentences(lines);
  const sharedSet = new Set(shared.map(({ sentence }) => sentence));
  return (
    <>
      {shared.map(({ sentence, isQuiet }) => (
        <p key={sentence} class={`problem-group__shared${isQuiet ? " problem-group__shared--quiet" : ""}`}>
          {sentence}
        </p>
      ))}
      <ul>
        {lines.map((line) => (
          <li key={line.id}>
            <later.DoseLine
              line={line}
              draft={draft}
              shared={sharedSet}
              isPinned={pinned.includes(line.id)}
              isChosen={choices[line.id] !== undefined}
              onPin={() => send({ type: "pinned", line: line.id })}
              onChoose={(option) => send({ type: "option-chosen", line: line.id, option })}
              // On paper the workings stand of what is open on the screen: those of a whole formulary fill a book.
              printing={printing && isOpen}
            />
          </li>
        ))}
      </ul>
    </>
  );
}

/** What will stand here, in the room that it will need. */
export function LinesToCome({ uses }: { readonly uses: readonly IndexedUse[] }): VNode {
  return (
    <ul>
      {uses.map(({ id, medicine, use }) => (
        <li key={id} class="problem-group__coming">
          <FormularyText>
            <b>{medicine}</b> {use}
          </FormularyText>
          <span class="unseen">, {messages.doseComing}</span>
        </li>
      ))}
    </ul>
  );
}
