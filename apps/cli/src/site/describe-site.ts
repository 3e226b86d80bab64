import type { StoredSiteProfile } from "@steelyard/core/body";

/** Whose calibration was used, in one sentence. */
export function describeSite({ identity, evidence }: StoredSiteProfile): string {
  const { name, createdOn, signed } = identity;
  const { children, dates } = evidence;
  const span = dates === undefined ? "" : `, weighed from ${dates.from} to ${dates.to}`;
  return (
    `Calibrated to ${name} by ${children.toLocaleString("en-GB")} children${span}; made on ${createdOn}, ` +
    `${signed ? "signed" : "and not signed by anybody"}.`
  );
}
