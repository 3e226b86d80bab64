import type { RefusalReason } from "@steelyard/records/sync";

/** How this device stands with the server of its department. */
export interface DepartmentState {
  /** `off`: the device has no token, and its cases stay on it. */
  readonly link: "off" | "on";
  /** Events that are on the device and not yet acknowledged. */
  readonly waiting: number;
  /** Events that the server did not take; they stay on the device. */
  readonly refused: readonly RefusalReason["type"][];
  /** Since nothing was acknowledged: no answer, no server under this address, a token that is not known, a server of another version. */
  readonly trouble?: "unreachable" | "no-server" | "not-enrolled" | "update-needed";
  /** When the server last answered, ms since 1970 by the device. */
  readonly reachedAt?: number;
}

export const unlinked: DepartmentState = { link: "off", waiting: 0, refused: [] };
