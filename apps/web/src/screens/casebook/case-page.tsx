import type { CaseRecord } from "@steelyard/records/case";
import type { VNode } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { AddNote } from "../../components/case-log/add-note.tsx";
import { writeDay, writeTimeOfDay } from "../../components/case-log/clock.ts";
import { ExportButtons } from "../../components/case-log/export-buttons.tsx";
import { LogList } from "../../components/case-log/log-list.tsx";
import { StopOrRun } from "../../components/case-log/stop-or-run.tsx";
import { writeQuantity } from "../../components/quantity/quantity.tsx";
import { useFocusAtFirst } from "../../effects/focus-at-first.ts";
import { saveText } from "../../effects/save-text.ts";
import { cases } from "../../messages/cases.ts";
import type { CaseDesk } from "../../state/case-desk.ts";
import { addressOf } from "../../state/screens.ts";
import { weighedWords } from "./case-list.tsx";
import { LaterWeight } from "./later-weight.tsx";

interface Props {
  readonly record: CaseRecord | undefined;
  readonly desk: CaseDesk;
}

/** One case: what was estimated, what the scale said, its whole log, and the way out. */
export function CasePage({ record, desk }: Props): VNode {
  const words = cases.casebook;
  const [purged, setPurged] = useState<string | undefined>(undefined);
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus({ preventScroll: true }), []);
  const back = (
    <p>
      <a class="case-page__back" href={addressOf({ screen: "casebook", path: "" })}>
        {words.back}
      </a>
    </p>
  );
  if (record === undefined) {
    return (
      <div class="case-page">
        {back}
        <p role="status">{purged === undefined ? words.missing : words.purged(purged)}</p>
      </div>
    );
  }
  const { caseId, code, startedAt, estimate, deletedAt, history } = record;
  const deletion = history.findLast(({ event, counts }) => counts && event.type === "deleted")?.event.id;
  return (
    <div class="case-page">
      {back}
      <h2 ref={heading} tabIndex={-1}>
        {cases.code(code)}
      </h2>
      <p class="case-page__when">
        {words.started(`${writeDay(startedAt)} ${writeTimeOfDay(startedAt)}`)}
        {record.closedAt === undefined && `, ${words.running}`}
      </p>
      {deletedAt !== undefined && deletion !== undefined && (
        <Deleted
          code={code}
          onBringBack={() => {
            heading.current?.focus();
            void desk.add(caseId, [{ type: "undo", target: deletion }]);
          }}
        />
      )}
      {estimate !== undefined && (
        <p class="case-page__weight">
          <b>{writeQuantity({ kg: estimate.estimate.totalKg })}</b>{" "}
          {writeQuantity({ fromKg: estimate.estimate.low95Kg, toKg: estimate.estimate.high95Kg })}
          {" · "}
          {weighedWords(record)}
        </p>
      )}
      <h3>{words.laterTitle}</h3>
      <LaterWeight record={record} onKeep={(draft) => void desk.add(caseId, [draft])} />
      <h3>{cases.logTitle}</h3>
      <AddNote onNote={(text) => void desk.add(caseId, [{ type: "note", text }])} />
      <LogList record={record} onAdd={(draft) => void desk.add(caseId, [draft])} />
      <StopOrRun record={record} onAdd={(draft) => void desk.add(caseId, [draft])} />
      <ExportButtons record={record} save={saveText} />
      <Removal
        isDeleted={deletedAt !== undefined}
        onDelete={() => void desk.add(caseId, [{ type: "deleted" }])}
        onPurge={() => {
          setPurged(code);
          void desk.purge(caseId);
        }}
      />
    </div>
  );
}

/** Says that the case is deleted, and brings it back. */
function Deleted({ code, onBringBack }: { readonly code: string; readonly onBringBack: () => void }): VNode {
  const words = cases.casebook;
  const button = useFocusAtFirst<HTMLButtonElement>();
  return (
    <div class="desk-remarks__loud" role="status">
      <p>{words.deleted(code)}</p>
      <button ref={button} class="button" type="button" onClick={onBringBack}>
        {words.undelete}
      </button>
    </div>
  );
}

interface RemovalProps {
  readonly isDeleted: boolean;
  readonly onDelete: () => void;
  readonly onPurge: () => void;
}

/** Deleting can be undone; only what is deleted can be purged, and that with a second word. */
function Removal({ isDeleted, onDelete, onPurge }: RemovalProps): VNode {
  const words = cases.casebook;
  const [isSure, setSure] = useState(false);
  return (
    <p class="case-page__removal">
      {!isDeleted && (
        <button class="button" type="button" onClick={onDelete}>
          {words.delete}
        </button>
      )}
      {isDeleted && (
        <button
          class="button case-page__purge"
          type="button"
          onClick={isSure ? onPurge : () => setSure(true)}
        >
          {isSure ? words.purgeSure : words.purge}
        </button>
      )}
    </p>
  );
}
