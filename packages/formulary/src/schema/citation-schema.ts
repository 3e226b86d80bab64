import type { Citation, Note, Source } from "@steelyard/core/dosing";
import * as v from "valibot";
import { identifier, text } from "./primitives.ts";

const verification = v.picklist(["read", "memory", "common practice"]);

const citation = v.strictObject({
  sourceId: identifier,
  locator: v.exactOptional(text),
  verification,
}) satisfies v.GenericSchema<unknown, Citation>;

/** At least one: a value without a source does not enter the formulary. */
export const citations: v.GenericSchema<unknown, readonly Citation[]> = v.pipe(
  v.array(citation),
  v.minLength(1, "has no source"),
);

export const note: v.GenericSchema<unknown, Note> = v.strictObject({ text, citations });

export const sourceSchema: v.GenericSchema<unknown, Source> = v.strictObject({
  id: identifier,
  title: text,
  authors: v.exactOptional(text),
  year: v.exactOptional(v.pipe(v.number(), v.integer(), v.minValue(1800))),
  doi: v.exactOptional(text),
  url: v.exactOptional(v.pipe(v.string(), v.url("must be a web address"))),
  verification,
  note: v.exactOptional(text),
});
