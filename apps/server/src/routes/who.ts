import type { Principal } from "@steelyard/records/people";

export interface Who {
  readonly id: string;
  readonly site: string;
  /** As the audit log names it. */
  readonly actor: string;
}

/** The person that asks, where the roles of the route let in nobody else. */
export function personOf(principal: Principal): Who {
  if (principal.kind !== "person") throw new TypeError("Cannot go on as the principal must be a person");
  return { id: principal.id, site: principal.site, actor: `person:${principal.id}` };
}
