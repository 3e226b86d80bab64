import {
  type CaseEvent,
  type CaseEventDraft,
  type CaseRecord,
  describeEvent,
  sinceStart,
} from "@steelyard/records/case";
import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { caseWords } from "../../messages/case-text.ts";
import { cases } from "../../messages/cases.ts";
import { writeTimeOfDay } from "./clock.ts";
import { CorrectDose } from "./correct-dose.tsx";

interface Props {
  readonly record: CaseRecord;
  readonly onAdd: (draft: CaseEventDraft) => void;
}

const undoable: ReadonlySet<CaseEvent["type"]> = new Set([
  "dose-given",
  "note",
  "second-reading",
  "later-weight",
]);

/** What happened in a case, the last first; what was taken back stays in sight, struck through. */
export function LogList({ record, onAdd }: Props): VNode {
  const [correcting, setCorrecting] = useState<string | undefined>(undefined);
  // Undos show in what they took back.
  const shown = record.history.filter(({ event }) => event.type !== "undo").toReversed();
  const undoOf = (target: string): string | undefined =>
    record.history.findLast(({ event, counts }) => counts && event.type === "undo" && event.target === target)
      ?.event.id;
  // Where one formulary gave every dose, the foot of the page and the exports name it.
  const isMixed = new Set(record.doses.map(({ versions }) => versions.formulary)).size > 1;
  return (
    <ol class="log-list" reversed>
      {shown.map(({ event, counts }) => {
        const what = describeEvent(event, caseWords);
        const undo = counts ? undefined : undoOf(event.id);
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
                {event.type === "dose-given" && isMixed && (
                  <>
                    {", "}
                    {cases.byFormulary(event.versions.formulary, event.versions.formularySigned)}
                  </>
                )}
              </span>
              {!counts && <b class="log-list__word"> {cases.takenBack}</b>}
            </p>
            {counts && undoable.has(event.type) && correcting !== event.id && (
              <div class="log-list__acts screen-only">
                {event.type === "dose-given" && (
                  <button
                    class="link"
                    type="button"
                    aria-label={cases.correctWhat(what)}
                    onClick={() => setCorrecting(event.id)}
                  >
                    {cases.correct}
                  </button>
                )}
                <button
                  class="link"
                  type="button"
                  aria-label={cases.undoWhat(what)}
                  onClick={() => onAdd({ type: "undo", target: event.id })}
                >
                  {cases.undo}
                </button>
              </div>
            )}
            {undo !== undefined && (
              <div class="log-list__acts screen-only">
                <button
                  class="link"
                  type="button"
                  aria-label={cases.bringBackWhat(what)}
                  onClick={() => onAdd({ type: "undo", target: undo })}
                >
                  {cases.bringBack}
                </button>
              </div>
            )}
            {correcting === event.id && event.type === "dose-given" && (
              <CorrectDose
                event={event}
                onSave={(draft) => {
                  onAdd(draft);
                  setCorrecting(undefined);
                }}
                onCancel={() => setCorrecting(undefined)}
              />
            )}
          </li>
        );
      })}
    </ol>
  );
}
