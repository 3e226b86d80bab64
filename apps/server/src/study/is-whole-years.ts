/** Whether a range of days, both included, begins and ends with a calendar year, or has no such end: what it finds has no narrower date. */
export function isWholeYears({
  from,
  to,
}: {
  readonly from?: string | undefined;
  readonly to?: string | undefined;
}): boolean {
  return (from === undefined || from.endsWith("-01-01")) && (to === undefined || to.endsWith("-12-31"));
}

/** What is answered where a researcher asks for less. */
export const wholeYearsOnly = {
  status: 422,
  body: { problem: "whole-years-only", reason: "from 1 January to 31 December" },
} as const;
