import type { CaseLog } from "../screens/case-log/case-log.tsx";

/** Asks for the clock and the log; fails where they cannot be had. */
export function loadCaseLog(): Promise<typeof CaseLog> {
  return import("../screens/case-log/case-log.tsx").then((part) => part.CaseLog);
}
