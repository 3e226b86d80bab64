import {
  type CaseEvent,
  type CaseEventDraft,
  type CaseRecord,
  describeEvent,
  sinceStart,
} from "@steelyard/records/case";
import type { VNode } from "preact";
import { writeTimeOfDay } from "../../../components/case-log/clock.ts";
import { caseWords } from "../../../messages/case-text.ts";
import { cases } from "../../../messages/cases.ts";

interface Props {
  readonly record: CaseRecord;
  readonly onAdd: (draft: CaseEventDraft) => void;
}

/** What is typed in the department may be taken back there; what the bedside wrote is corrected at the bedside. */
const undoable: ReadonlySet<CaseEvent["type"]> = new Set(["note", "later-weight"]);

/** What happened in a case, the first first; what was taken back stays in sight, struck through. */
export function Timeline({ record, onAdd }: Props): VNode {
  const shown = record.history.filter(({ event }) => event.type !== "undo");
  const undoOf = (target: string): string | undefined =>
    record.history.findLast(({ event, counts }) => counts && event.type === "undo" && event.target === target)
      ?.event.id;
  return (
    <ol class="log-list">
      {shown.map(({ event, counts }) => {
        const what = describeEvent(event, caseWords);
        const target = counts ? event.id : undoOf(event.id);
        return (
          <li key={event.id} class={counts ? undefined : "log-list__taken"} data-event={event.type}>
            <p>
              <span class="log-list__time">
                <b>{sinceStart(event.at, record.startedAt)}</b> {writeTimeOfDay(event.at)}
              </span>{" "}
              <span class="log-list__what">
                {event.replaces !== undefined && `${cases.correction}: `}
                {counts ? what : <s>{what}</s>}
                {event.by !== undefined && `, ${event.by}`}
              </span>
              {!counts && <b class="log-list__word"> {cases.takenBack}</b>}
            </p>
            {undoable.has(event.type) && target !== undefined && (
              <div class="log-list__acts screen-only">
                <button
                  class="link"
                  type="button"
                  aria-label={counts ? cases.undoWhat(what) : cases.bringBackWhat(what)}
                  onClick={() => onAdd({ type: "undo", target })}
                >
                  {counts ? cases.undo : cases.bringBack}
                </button>
              </div>
            )}
          </li>
        );
      })}
    </ol>
  );
}
