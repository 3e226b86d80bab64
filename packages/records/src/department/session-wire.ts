import * as v from "valibot";
import { loginName, type PersonRole, passwordText, roleList, shownCode, shownName, uuid } from "./wire.ts";

/** Whether anybody is there, and who is signed in. */
export type SessionAnswer =
  /** Nobody exists yet: the code that the server printed makes the first administrator. */
  | { readonly state: "set-up" }
  | { readonly state: "signed-out" }
  | {
      readonly state: "signed-in";
      readonly person: {
        readonly id: string;
        readonly name: string;
        readonly login: string;
        readonly roles: readonly PersonRole[];
        readonly site: string;
      };
      /** Goes back in the header `x-steelyard-csrf` with every POST. */
      readonly csrf: string;
    };
export const sessionAnswerSchema: v.GenericSchema<SessionAnswer> = v.variant("state", [
  v.strictObject({ state: v.literal("set-up") }),
  v.strictObject({ state: v.literal("signed-out") }),
  v.strictObject({
    state: v.literal("signed-in"),
    person: v.strictObject({
      id: uuid,
      name: shownName,
      login: loginName,
      roles: roleList,
      site: v.string(),
    }),
    csrf: v.string(),
  }),
]);

export interface SetUpRequest {
  readonly code: string;
  readonly name: string;
  readonly login: string;
  readonly password: string;
}
export const setUpRequestSchema: v.GenericSchema<SetUpRequest> = v.strictObject({
  code: shownCode,
  name: shownName,
  login: loginName,
  password: passwordText,
});

export interface SignInRequest {
  readonly login: string;
  readonly password: string;
}
/** A login that could not be one is answered like one that is not known. */
export const signInRequestSchema: v.GenericSchema<SignInRequest> = v.strictObject({
  login: v.pipe(v.string(), v.maxLength(200, "is too long")),
  password: passwordText,
});

export interface JoinRequest {
  readonly code: string;
  readonly login: string;
  readonly password: string;
}
export const joinRequestSchema: v.GenericSchema<JoinRequest> = v.strictObject({
  code: shownCode,
  login: loginName,
  password: passwordText,
});

export interface PasswordRequest {
  readonly current: string;
  readonly next: string;
}
export const passwordRequestSchema: v.GenericSchema<PasswordRequest> = v.strictObject({
  current: passwordText,
  next: passwordText,
});
export const passwordAnswerSchema: v.GenericSchema<{ readonly changed: true }> = v.strictObject({
  changed: v.literal(true),
});
export const signedOutSchema: v.GenericSchema<{ readonly state: "signed-out" }> = v.strictObject({
  state: v.literal("signed-out"),
});
