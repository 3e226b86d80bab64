import * as v from "valibot";

/** Every answer of the interface that is no success: a word for programs, and where it helps a reason for people. */
export interface Problem {
  readonly problem: string;
  readonly reason?: string | undefined;
}

export const problemSchema: v.GenericSchema<unknown, Problem> = v.strictObject({
  problem: v.pipe(v.string(), v.regex(/^[a-z-]{1,40}$/)),
  reason: v.optional(v.pipe(v.string(), v.maxLength(300))),
}) as unknown as v.GenericSchema<unknown, Problem>;
