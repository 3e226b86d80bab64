import * as v from "valibot";
import { day, instant, uuid } from "../case/primitives.ts";
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
export const sha256: v.GenericSchema<string> = v.pipe(
  v.string(),
  v.regex(/^[0-9a-f]{64}$/, "must be 64 hexadecimal digits"),
);
export const number: v.GenericSchema<number> = v.pipe(v.number(), v.finite("must be a finite number"));
export const count: v.GenericSchema<number> = v.pipe(v.number(), v.integer(), v.minValue(0));
/** Of somebody who wrote or signed; whoever is no person (a command) is called by its own word. */
export const personName: v.GenericSchema<string> = v.string();
/** Days of a query, both included. */
export const dayRange: {
  from: v.OptionalSchema<typeof day, undefined>;
  to: v.OptionalSchema<typeof day, undefined>;
} = {
  from: v.optional(day),
  to: v.optional(day),
};
/** In a query numbers come as text. */
export const wholeInQuery: v.GenericSchema<string, number> = v.pipe(
  v.string(),
  v.regex(/^\d{1,15}$/, "must be a whole number"),
  v.transform(Number),
);
export function limitInQuery(longest: number): v.GenericSchema<string, number> {
  return v.pipe(
    wholeInQuery,
    v.minValue(1, "must be at least 1"),
    v.maxValue(longest, `must be at most ${longest}`),
  );
}
export { instant, uuid };
