import { documentsAnswerSchema } from "@steelyard/records/department";
import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { Answer } from "../../components/answer.tsx";
import { SelectLine } from "../../components/select-line.tsx";
import type { ScreenProps } from "../../frame/screen-props.ts";
import { words } from "../../messages/index.ts";
import { useAnswer } from "../../state/department-context.ts";
import { hashOf } from "../../state/department-screens.ts";
import { VersionList } from "../documents/version-list.tsx";
import { CompareFormularies } from "./compare-formularies.tsx";
import { EditFormulary } from "./edit-formulary.tsx";
import { ImportFormulary } from "./import-formulary.tsx";
import { OneFormulary } from "./one-formulary.tsx";
import { draftName, draftVersion } from "./with-formulary.tsx";

/** Versions, one of them, an edit of one, or two beside each other. */
export function FormularyScreen({ path, person }: ScreenProps): VNode {
  const [first, second, third] = path;
  if (first === "edit" && second !== undefined) return <EditFormulary key={second} sha256={second} />;
  if (first === "compare" && second !== undefined && third !== undefined)
    return <CompareFormularies key={`${second}${third}`} from={second} to={third} />;
  if (first !== undefined) return <OneFormulary key={first} sha256={first} person={person} />;
  return <Versions />;
}

function Versions(): VNode {
  const { formulary } = words;
  const answer = useAnswer({
    path: "documents",
    query: { kind: "formulary" },
    schema: documentsAnswerSchema,
  });
  return (
    <div class="stack sides sides--end">
      <div class="stack">
        <p class="soft">{formulary.intro}</p>
        <Answer answer={answer}>{(versions) => <VersionList {...versions} screen="formulary" />}</Answer>
      </div>
      <div class="stack screen-only">
        <p>
          <a class="button" href={hashOf("formulary", "edit", draftName)}>
            {formulary.fromDraft}
          </a>
        </p>
        <Answer answer={answer}>
          {({ documents }) => (
            <Compare
              options={[
                ...documents.map(({ sha256, label }) => [sha256, label] as const),
                [draftName, formulary.draftLabel(draftVersion)],
              ]}
            />
          )}
        </Answer>
        <ImportFormulary />
      </div>
    </div>
  );
}

function Compare({ options }: { readonly options: readonly (readonly [string, string])[] }): VNode | null {
  const { formulary } = words;
  const [from, setFrom] = useState(options.at(-1)?.[0] ?? "");
  const [to, setTo] = useState(options[0]?.[0] ?? "");
  if (options.length < 2) return null;
  return (
    <section class="stack" aria-labelledby="compare">
      <h2 id="compare">{formulary.compareTitle}</h2>
      <SelectLine label={formulary.compareFrom} value={from} options={options} onChoose={setFrom} />
      <SelectLine label={formulary.compareWith} value={to} options={options} onChoose={setTo} />
      <p>
        <a class="button" href={hashOf("formulary", "compare", from, to)}>
          {formulary.compare}
        </a>
      </p>
    </section>
  );
}
