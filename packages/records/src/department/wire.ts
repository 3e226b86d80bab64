import * as v from "valibot";
import { instant, uuid } from "../case/primitives.ts";
import type { Role } from "../people/principal.ts";

/** What a person may be; `device` is no role of a person. */
export type PersonRole = Exclude<Role, "device">;
export const personRoles: readonly PersonRole[] = ["clinician", "reviewer", "researcher", "administrator"];

/** Blank at neither end, on one line; what is shown of a person or device. */
export const shownName: v.GenericSchema<string> = v.pipe(
  v.string(),
  v.regex(/^\S(.*\S)?$/u, "must not be empty or begin or end with a blank"),
  v.regex(/^\P{C}*$/u, "must hold no control signs"),
  v.maxLength(80, "must have at most 80 characters"),
);
export const loginName: v.GenericSchema<string> = v.pipe(
  v.string(),
  v.regex(
    /^[a-z0-9][a-z0-9._@-]{1,63}$/,
    "must be 2 to 64 small letters, digits, dots, hyphens, underscores or @",
  ),
);
/** How good it is says the server; here only that it is a text of a size that is worth hashing. */
export const passwordText: v.GenericSchema<string> = v.pipe(
  v.string(),
  v.minLength(1, "must not be empty"),
  v.maxLength(512, "is too long"),
);
export const roleList: v.GenericSchema<readonly PersonRole[]> = v.pipe(
  v.array(v.picklist(["clinician", "reviewer", "researcher", "administrator"])),
  v.minLength(1, "must be one role at least"),
  v.maxLength(4, "must be at most four roles"),
  v.check((roles) => new Set(roles).size === roles.length, "must hold no role twice"),
);
/** A code that was shown once: of an invitation, or of the first start. */
export const shownCode: v.GenericSchema<string> = v.pipe(
  v.string(),
  v.minLength(1, "must not be empty"),
  v.maxLength(64, "is too long"),
);
/** Nothing is asked; an object all the same, so that a form of another page cannot be taken for it. */
export const nothing: v.GenericSchema<Readonly<Record<string, never>>> = v.strictObject({});
export { instant, uuid };
