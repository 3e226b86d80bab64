import * as v from "valibot";
import { instant, shownName, uuid } from "./wire.ts";

export interface DeviceEntry {
  readonly id: string;
  readonly name: string;
  readonly enrolledAt: string;
  readonly revokedAt?: string | undefined;
}
export const devicesAnswerSchema: v.GenericSchema<{ readonly devices: readonly DeviceEntry[] }> =
  v.strictObject({
    devices: v.array(
      v.strictObject({ id: uuid, name: v.string(), enrolledAt: instant, revokedAt: v.optional(instant) }),
    ),
  });
export const enrolRequestSchema: v.GenericSchema<{ readonly name: string }> = v.strictObject({
  name: shownName,
});
/** The token is in no other answer and only its hash is kept. */
export interface EnrolAnswer {
  readonly id: string;
  readonly token: string;
}
export const enrolAnswerSchema: v.GenericSchema<EnrolAnswer> = v.strictObject({
  id: uuid,
  token: v.string(),
});
export const revokeRequestSchema: v.GenericSchema<{ readonly id: string }> = v.strictObject({ id: uuid });
export const revokedSchema: v.GenericSchema<{ readonly revoked: true }> = v.strictObject({
  revoked: v.literal(true),
});
