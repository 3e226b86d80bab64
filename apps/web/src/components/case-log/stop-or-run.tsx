import type { CaseEventDraft, CaseRecord } from "@steelyard/records/case";
import type { VNode } from "preact";
import { cases } from "../../messages/cases.ts";

interface Props {
  readonly record: CaseRecord;
  readonly onAdd: (draft: CaseEventDraft) => void;
}

/** Stops the clock of a case, or lets it run on. */
export function StopOrRun({ record, onAdd }: Props): VNode {
  const closed = record.history.findLast(({ event, counts }) => counts && event.type === "closed")?.event.id;
  return (
    <button
      class="button screen-only"
      type="button"
      onClick={() => onAdd(closed === undefined ? { type: "closed" } : { type: "undo", target: closed })}
    >
      {closed === undefined ? cases.stop : cases.runOn}
    </button>
  );
}
