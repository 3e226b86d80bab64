import * as v from "valibot";
import { instant, loginName, type PersonRole, roleList, shownCode, shownName, uuid } from "./wire.ts";

/** As an administrator sees a person. */
export interface PersonEntry {
  readonly id: string;
  readonly name: string;
  /** Absent until the invitation was taken. */
  readonly login?: string | undefined;
  readonly roles: readonly PersonRole[];
  readonly state: "invited" | "active" | "locked" | "removed";
  readonly lastSignInAt?: string | undefined;
  readonly passkeys: number;
}
const personEntry: v.GenericSchema<PersonEntry> = v.strictObject({
  id: uuid,
  name: shownName,
  login: v.optional(loginName),
  roles: roleList,
  state: v.picklist(["invited", "active", "locked", "removed"]),
  lastSignInAt: v.optional(instant),
  passkeys: v.pipe(v.number(), v.integer(), v.minValue(0)),
});
export const peopleAnswerSchema: v.GenericSchema<{ readonly people: readonly PersonEntry[] }> =
  v.strictObject({ people: v.array(personEntry) });

export interface InviteRequest {
  readonly name: string;
  readonly roles: readonly PersonRole[];
}
export const inviteRequestSchema: v.GenericSchema<InviteRequest> = v.strictObject({
  name: shownName,
  roles: roleList,
});
/** The code is in no other answer and is not kept. */
export interface InviteAnswer {
  readonly code: string;
  readonly expiresAt: string;
}
export const inviteAnswerSchema: v.GenericSchema<InviteAnswer> = v.strictObject({
  code: shownCode,
  expiresAt: instant,
});

export interface ChangePersonRequest {
  readonly id: string;
  readonly roles?: readonly PersonRole[] | undefined;
  readonly state?: "active" | "removed" | undefined;
  readonly unlock?: true | undefined;
  readonly newInvitation?: true | undefined;
}
export const changePersonRequestSchema: v.GenericSchema<ChangePersonRequest> = v.strictObject({
  id: uuid,
  roles: v.optional(roleList),
  state: v.optional(v.picklist(["active", "removed"])),
  unlock: v.optional(v.literal(true)),
  newInvitation: v.optional(v.literal(true)),
});
export interface ChangePersonAnswer {
  readonly person: PersonEntry;
  readonly code?: string | undefined;
  readonly expiresAt?: string | undefined;
}
export const changePersonAnswerSchema: v.GenericSchema<ChangePersonAnswer> = v.strictObject({
  person: personEntry,
  code: v.optional(shownCode),
  expiresAt: v.optional(instant),
});
