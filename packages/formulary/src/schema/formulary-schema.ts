import type { Formulary, Medicine, OverlayRecord, SignOff } from "@steelyard/core/dosing";
import * as v from "valibot";
import { note, sourceSchema } from "./citation-schema.ts";
import { identifier, positive, text } from "./primitives.ts";
import { strength } from "./strength-schema.ts";
import { problem, use } from "./use-schema.ts";

export const medicineSchema: v.GenericSchema<unknown, Medicine> = v.strictObject({
  id: identifier,
  name: text,
  kind: v.picklist(["medicine", "fluid", "energy"]),
  highAlert: v.exactOptional(note),
  strengths: v.array(strength),
  incompatibilities: v.array(note),
  uses: v.pipe(v.array(use), v.minLength(1, "has no use")),
});

const reviewer = {
  name: text,
  role: text,
  date: v.pipe(v.string(), v.isoDate("must be a day such as 2026-11-25")),
};

const signOff = v.strictObject({
  ...reviewer,
  second: v.exactOptional(v.strictObject(reviewer)),
  fingerprint: v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/, "must be 64 hexadecimal digits")),
}) satisfies v.GenericSchema<unknown, SignOff>;

const overlayRecord = v.strictObject({
  id: identifier,
  version: text,
  title: text,
  baseVersion: text,
  changes: v.array(v.strictObject({ change: v.picklist(["set", "add", "remove"]), at: text, reason: text })),
}) satisfies v.GenericSchema<unknown, OverlayRecord>;

/** The shape of a formulary; what the parts must mean together is checked after it. */
export const formularySchema: v.GenericSchema<unknown, Formulary> = v.strictObject({
  id: identifier,
  version: text,
  title: text,
  language: v.exactOptional(
    v.pipe(v.string(), v.regex(/^[a-z]{2,3}(-[A-Za-z0-9]{2,8})*$/, 'must be a language tag such as "fr"')),
  ),
  signed: v.boolean(),
  medicines: v.array(medicineSchema),
  deviceEnergiesJ: v.array(positive),
  problemOrder: v.exactOptional(v.array(problem)),
  overlays: v.exactOptional(v.array(overlayRecord)),
  signOff: v.exactOptional(signOff),
  sources: v.array(sourceSchema),
});
