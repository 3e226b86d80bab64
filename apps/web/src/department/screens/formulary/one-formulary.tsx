import { documentsAnswerSchema } from "@steelyard/records/department";
import type { VNode } from "preact";
import { saveText } from "../../../effects/save-text.ts";
import { Answer } from "../../components/answer.tsx";
import { writeTime } from "../../components/write-time.ts";
import { words } from "../../messages/index.ts";
import { useAnswer } from "../../state/department-context.ts";
import { hashOf } from "../../state/department-screens.ts";
import type { Person } from "../../state/department-state.ts";
import { Signing } from "../documents/signing.tsx";
import { VersionTags } from "../documents/version-list.tsx";
import { Beside } from "./beside.tsx";
import { ReadFormulary } from "./read-formulary.tsx";
import { draftName, WithFormulary } from "./with-formulary.tsx";

interface Props {
  readonly sha256: string;
  readonly person: Person;
}

/** One version: how it stands, what it changes, all of it to read, its signatures, and what may be done with it. */
export function OneFormulary({ sha256, person }: Props): VNode {
  const { documents: said, formulary: own } = words;
  const versions = useAnswer({
    path: "documents",
    query: { kind: "formulary" },
    schema: documentsAnswerSchema,
  });
  return (
    <div class="stack wide">
      <p class="screen-only">
        <a class="case-page__back" href={hashOf("formulary")}>
          {said.all}
        </a>
      </p>
      <WithFormulary sha256={sha256}>
        {({ formulary, label, document, content }) => (
          <>
            <div class="stack">
              <h2>{label}</h2>
              {document !== undefined && (
                <>
                  <p class="soft">{said.made({ person: document.by.name, time: writeTime(document.at) })}</p>
                  <VersionTags document={document} />
                </>
              )}
              <p class="row screen-only">
                <a class="button" href={hashOf("formulary", "edit", sha256)}>
                  {own.edit}
                </a>
                {content !== undefined && (
                  <button
                    class="button"
                    type="button"
                    onClick={() =>
                      saveText({
                        name: `formulary-${sha256.slice(0, 12)}.json`,
                        text: content,
                        type: "application/json",
                      })
                    }
                  >
                    {said.saveFile}
                  </button>
                )}
              </p>
            </div>
            <Answer answer={versions}>
              {({ documents }) => {
                const inForce = documents.find((one) => one.inForce);
                return (
                  <>
                    <Beside formulary={formulary} other={inForce?.sha256 ?? draftName} own={sha256} />
                    <ReadFormulary formulary={formulary} />
                    {document !== undefined && (
                      <Signing document={document} person={person} inForce={inForce} />
                    )}
                  </>
                );
              }}
            </Answer>
          </>
        )}
      </WithFormulary>
    </div>
  );
}
