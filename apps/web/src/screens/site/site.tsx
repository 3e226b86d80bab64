import type { StoredSiteProfile } from "@steelyard/core/body";
import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { FileChoice } from "../../components/file-choice/file-choice.tsx";
import { useDepartment } from "../../effects/case-desk/use-department.ts";
import { offerRules } from "../../effects/site-rules/site-rules.ts";
import type { ScreenProps } from "../../frame/screen-props.ts";
import { siteMessages } from "../../messages/site.ts";
import { DepartmentLink } from "./department-link.tsx";
import { OwnFormulary } from "./own-formulary.tsx";
import { readSiteText } from "./read-site-text.ts";
import "./site.css";

type Said =
  | { readonly type: "nothing" | "taken-off" }
  | { readonly type: "taken"; readonly name: string; readonly isKept: boolean };

/** What belongs to the place and stays on the device: its formulary and its calibration, and the link to its department. */
export function Screen({ site, formulary, next }: ScreenProps): VNode {
  const [refused, setRefused] = useState<readonly string[]>([]);
  const [said, setSaid] = useState<Said>({ type: "nothing" });
  const { state } = useDepartment();
  const ofDepartment = {
    formulary: state.link === "on" && state.holds.formulary !== undefined,
    calibration: state.link === "on" && state.holds.calibration !== undefined,
  };
  const take = (file: string, text: string): void => {
    const read = readSiteText(file, text);
    setRefused(read.ok ? [] : read.error);
    setSaid({ type: "nothing" });
    if (!read.ok) return;
    const { name } = read.value.identity;
    void offerRules({ site: read.value }).then((isKept) => setSaid({ type: "taken", name, isKept }));
  };
  const takeOff = (): void => {
    setRefused([]);
    void offerRules({ site: null }).then(() => setSaid({ type: "taken-off" }));
  };
  const waiting = next?.site;
  const own = waiting === undefined ? site : waiting.profile;
  return (
    <div class="site">
      <OwnFormulary formulary={formulary} next={next} isOfDepartment={ofDepartment.formulary} />
      <h2>{siteMessages.calibrationTitle}</h2>
      <p>{siteMessages.intro}</p>
      {!ofDepartment.calibration && (
        <FileChoice
          label={siteMessages.calibration}
          hint={siteMessages.hint}
          taken={own && { takeOff: siteMessages.takeOff(own.identity.name) }}
          refused={refused}
          onText={take}
          onTakeOff={takeOff}
        />
      )}
      <p role="status">{sentenceOf(said, waiting !== undefined)}</p>
      {waiting !== undefined && said.type === "nothing" && (
        <p class="site__waits">{siteMessages.calibrationWaits(waiting.profile?.identity.name)}</p>
      )}
      {own === undefined ? waiting === undefined && <p>{siteMessages.none}</p> : <Evidence site={own} />}
      <DepartmentLink />
    </div>
  );
}

function sentenceOf(said: Said, isWaiting: boolean): string {
  switch (said.type) {
    case "nothing":
      return "";
    case "taken-off":
      return isWaiting ? siteMessages.takenOffNext : siteMessages.takenOff;
    case "taken": {
      const taken = isWaiting ? siteMessages.keptNext(said.name) : siteMessages.kept(said.name);
      return said.isKept ? taken : `${taken} ${siteMessages.notKept}`;
    }
  }
}

/** Whose calibration it is, what it was learnt from and what it changed there. */
function Evidence({ site }: { readonly site: StoredSiteProfile }): VNode {
  const { identity, evidence, modelVersion } = site;
  const { before, after } = evidence;
  const { facts, change } = siteMessages;
  const rows: readonly (readonly [string, string])[] = [
    [facts.site, identity.name],
    [facts.made, siteMessages.made(identity)],
    [facts.children, siteMessages.children(evidence)],
    [facts.meanError, change(before.meanError, after.meanError)],
    [facts.within10, change(before.within10, after.within10)],
    [facts.coverage, change(before.coverage, after.coverage)],
    [facts.model, modelVersion],
    [facts.rows, identity.rowsSha256.slice(0, 16)],
  ];
  return (
    <>
      {!identity.signed && <p class="site__unsigned">{siteMessages.unsigned}</p>}
      <dl class="site__facts">
        {rows.map(([term, value]) => (
          <div key={term}>
            <dt>{term}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
    </>
  );
}
