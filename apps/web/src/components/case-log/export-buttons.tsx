import { type CaseRecord, caseText, fhirBundle, writeCaseFile } from "@steelyard/records/case";
import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { caseWords } from "../../messages/case-text.ts";
import { cases } from "../../messages/cases.ts";

type Save = (file: { readonly name: string; readonly text: string; readonly type: string }) => void;

interface Props {
  readonly record: CaseRecord;
  readonly save: Save;
}

/** One case as a file: to read, to bring back, or for a record system. */
export function ExportButtons({ record, save }: Props): VNode {
  const [made, setMade] = useState<string | undefined>(undefined);
  const name = `case-${record.code}`;
  const files = {
    exportText: { name: `${name}.txt`, type: "text/plain", text: () => caseText(record, caseWords) },
    exportJson: {
      name: `${name}.json`,
      type: "application/json",
      text: () => writeCaseFile(record.history.map(({ event }) => event)),
    },
    exportFhir: {
      name: `${name}.fhir.json`,
      type: "application/fhir+json",
      text: () => `${JSON.stringify(fhirBundle(record), undefined, 1)}\n`,
    },
  } as const;
  return (
    <div class="export screen-only">
      <h3>{cases.exportTitle}</h3>
      <div class="export__buttons">
        {(Object.keys(files) as (keyof typeof files)[]).map((kind) => (
          <button
            key={kind}
            class="button"
            type="button"
            onClick={() => {
              const { text, ...file } = files[kind];
              save({ ...file, text: text() });
              setMade(file.name);
            }}
          >
            {cases[kind]}
          </button>
        ))}
      </div>
      <p role="status">{made !== undefined && cases.exported(made)}</p>
    </div>
  );
}
