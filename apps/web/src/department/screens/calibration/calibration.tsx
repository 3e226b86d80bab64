import { documentsAnswerSchema, wholeDocumentSchema } from "@steelyard/records/department";
import type { VNode } from "preact";
import { readSiteText } from "../../../screens/site/read-site-text.ts";
import { Answer } from "../../components/answer.tsx";
import { writeTime } from "../../components/write-time.ts";
import type { ScreenProps } from "../../frame/screen-props.ts";
import { words } from "../../messages/index.ts";
import { useAnswer } from "../../state/department-context.ts";
import { hashOf } from "../../state/department-screens.ts";
import { hasRole, type Person } from "../../state/department-state.ts";
import { Signing } from "../documents/signing.tsx";
import { VersionList, VersionTags } from "../documents/version-list.tsx";
import { CalibrationFacts } from "./calibration-facts.tsx";
import { Fit } from "./fit.tsx";

/** Calibrations: fitted, judged, kept, signed and put in force. */
export function Calibration({ path, person }: ScreenProps): VNode {
  const [sha256] = path;
  const answer = useAnswer({
    path: "documents",
    query: { kind: "calibration" },
    schema: documentsAnswerSchema,
  });
  if (sha256 !== undefined) return <OneCalibration key={sha256} sha256={sha256} person={person} />;
  return (
    <div class="stack sides sides--end">
      <div class="stack">
        <p class="soft">{words.documents.calibrationIntro}</p>
        <Answer answer={answer}>{(versions) => <VersionList {...versions} screen="calibration" />}</Answer>
      </div>
      {hasRole(person, "reviewer", "clinician") && <Fit />}
    </div>
  );
}

function OneCalibration({ sha256, person }: { readonly sha256: string; readonly person: Person }): VNode {
  const { documents: said } = words;
  const answer = useAnswer({ path: "document", query: { sha256 }, schema: wholeDocumentSchema });
  const versions = useAnswer({
    path: "documents",
    query: { kind: "calibration" },
    schema: documentsAnswerSchema,
  });
  return (
    <div class="stack wide">
      <p class="screen-only">
        <a class="case-page__back" href={hashOf("calibration")}>
          {said.all}
        </a>
      </p>
      <Answer answer={answer}>
        {({ document, content }) => {
          const site = readSiteText(document.label, content);
          return (
            <>
              <div class="stack">
                <h2>{document.label}</h2>
                <p class="soft">{said.made({ person: document.by.name, time: writeTime(document.at) })}</p>
                <VersionTags document={document} />
              </div>
              {site.ok ? (
                <CalibrationFacts site={site.value} />
              ) : (
                <div class="note note--warn" role="alert">
                  {site.error.map((sentence) => (
                    <p key={sentence}>{sentence}</p>
                  ))}
                </div>
              )}
              <Answer answer={versions}>
                {({ documents }) => (
                  <Signing
                    document={document}
                    person={person}
                    inForce={documents.find((one) => one.inForce)}
                  />
                )}
              </Answer>
            </>
          );
        }}
      </Answer>
    </div>
  );
}
