import { type CaseRecord, writeCaseFile, writeStudyRows } from "@steelyard/records/case";
import type { VNode } from "preact";
import { useId, useState } from "preact/hooks";
import { writeDay } from "../../components/case-log/clock.ts";
import { saveText } from "../../effects/save-text.ts";
import { cases } from "../../messages/cases.ts";
import type { CaseDesk } from "../../state/case-desk.ts";
import { type ImportRead, readImport } from "./read-import.ts";

interface Props {
  readonly desk: CaseDesk;
  readonly records: readonly CaseRecord[];
}

/** Most faults that are shown at once; the rest are counted. */
const mostFaults = 12;

/** Cases out of this device, and into it. */
export function Transfer({ desk, records }: Props): VNode {
  const words = cases.casebook;
  const id = useId();
  const [made, setMade] = useState<string | undefined>(undefined);
  const [read, setRead] = useState<ImportRead | undefined>(undefined);
  const save = (file: { readonly name: string; readonly text: string; readonly type: string }): void => {
    saveText(file);
    setMade(file.name);
  };
  const day = (): string => writeDay(new Date().toISOString());
  return (
    <section class="transfer screen-only">
      {records.length > 0 && (
        <>
          <h2>{words.exportAll}</h2>
          <div class="export__buttons">
            <button
              class="button"
              type="button"
              onClick={() =>
                save({ name: `cases-study-${day()}.csv`, text: writeStudyRows(records), type: "text/csv" })
              }
            >
              {words.exportCsv}
            </button>
            <button
              class="button"
              type="button"
              onClick={() =>
                save({
                  name: `cases-${day()}.json`,
                  text: writeCaseFile(desk.state().events),
                  type: "application/json",
                })
              }
            >
              {words.exportJsonAll}
            </button>
          </div>
          <p>{words.exportCsvHint}</p>
          <p role="status">{made !== undefined && cases.exported(made)}</p>
        </>
      )}
      <h2>{words.importTitle}</h2>
      <label class="transfer__import" for={id}>
        <b>{words.importLabel}</b> <span>{words.importHint}</span>
      </label>
      <input
        id={id}
        type="file"
        accept=".json,.csv,application/json,text/csv"
        onChange={({ currentTarget }) => {
          const [file] = currentTarget.files ?? [];
          if (file === undefined) return;
          void file.text().then(async (text) => {
            const fresh = readImport(text, { at: new Date().toISOString(), uuid: () => crypto.randomUUID() });
            await desk.take(fresh.events);
            setRead(fresh);
          });
          // The same file, mended, can be chosen again.
          currentTarget.value = "";
        }}
      />
      <div role="status">
        {read !== undefined && (
          <p>
            {read.events.length === 0
              ? words.importedNone
              : words.imported(read.events.length, new Set(read.events.map(({ caseId }) => caseId)).size)}
          </p>
        )}
      </div>
      {read !== undefined && read.faults.length > 0 && (
        <div class="desk-remarks__loud" role="alert">
          <p>
            <b>{words.refusedTitle(read.faults.length)}</b>
          </p>
          <ul>
            {read.faults.slice(0, mostFaults).map((fault) => (
              <li key={fault}>{fault}</li>
            ))}
          </ul>
          {read.faults.length > mostFaults && (
            <p>{cases.importFaults.more(read.faults.length - mostFaults)}</p>
          )}
        </div>
      )}
    </section>
  );
}
