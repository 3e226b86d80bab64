/** What somebody may do. A device may push and pull; the rest are people. */
export type Role = "device" | "clinician" | "reviewer" | "researcher" | "administrator";

/**
 * Who asks. Made by whatever proved it (today the token of a device; a session is to make a `person`), read by the route
 * table and by the audit log. Everything that a principal does happens at its one site.
 */
export type Principal =
  | { readonly kind: "anyone" }
  | { readonly kind: "device"; readonly id: string; readonly site: string; readonly roles: readonly Role[] }
  | { readonly kind: "person"; readonly id: string; readonly site: string; readonly roles: readonly Role[] };

/**
 * Whether one of the roles of `principal` is among `allowed`.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { hasRole } from "@steelyard/records/people";
 *
 * const tablet = { kind: "device", id: "1", site: "resus", roles: ["device"] } as const;
 * assert.equal(hasRole(tablet, ["device"]), true);
 * assert.equal(hasRole(tablet, ["administrator"]), false);
 * assert.equal(hasRole({ kind: "anyone" }, ["device"]), false);
 * ```
 */
export function hasRole(principal: Principal, allowed: readonly Role[]): boolean {
  return principal.kind !== "anyone" && principal.roles.some((role) => allowed.includes(role));
}
