import type { StoredSiteProfile } from "@steelyard/core/body";
import type { VNode } from "preact";
import { siteMessages } from "../../../messages/site.ts";

/** Whose a calibration is, what it was learnt from, and what it changed there. */
export function CalibrationFacts({ site }: { readonly site: StoredSiteProfile }): VNode {
  const { identity, evidence, modelVersion } = site;
  const { before, after } = evidence;
  const { facts, change } = siteMessages;
  const rows = [
    [facts.site, identity.name],
    [facts.made, identity.createdOn],
    [facts.children, siteMessages.children(evidence)],
    [facts.meanError, change(before.meanError, after.meanError)],
    [facts.within10, change(before.within10, after.within10)],
    [facts.coverage, change(before.coverage, after.coverage)],
    [facts.model, modelVersion],
    [facts.rows, identity.rowsSha256.slice(0, 16)],
  ] as const;
  return (
    <dl class="facts">
      {rows.map(([term, value]) => (
        <div key={term}>
          <dt>{term}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}
