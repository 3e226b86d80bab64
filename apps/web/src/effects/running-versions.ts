import type { CaseEvent } from "@steelyard/records/case";
import type { RunningVersions } from "../state/site-rules.ts";
import { versionsOf } from "../state/versions.ts";
import { findSite } from "./kept-site.ts";

let running: RunningVersions | undefined;

/** Says what the children of this tab are computed by from now on. */
export function setRunning(now: RunningVersions): void {
  running = now;
}

/** What stands on an event that is made now. */
export function eventVersions(): CaseEvent["versions"] {
  const now = running ?? versionsOf({ formulary: undefined, site: findSite() });
  const { software, model, formularySigned, site } = now;
  return {
    software,
    model,
    formulary: formularyName(now),
    formularySigned,
    // A case has room for 120 characters of it; of a longer name the day must not be lost.
    ...(site && { calibration: `${site.name.slice(0, 100)}, ${site.createdOn}` }),
  };
}

/** The version of a formulary; two of a site may bear the same, so the beginning of the fingerprint follows. */
function formularyName({ formulary, own }: RunningVersions): string {
  return own === undefined ? formulary : `${formulary.slice(0, 100)}, ${own.fingerprint.slice(0, 12)}`;
}
