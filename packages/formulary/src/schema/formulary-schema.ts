import type { Formulary, Medicine } from "@steelyard/core/dosing";
import * as v from "valibot";
import { note, sourceSchema } from "./citation-schema.ts";
import { identifier, positive, text } from "./primitives.ts";
import { strength } from "./strength-schema.ts";
import { use } from "./use-schema.ts";

const medicine = v.strictObject({
  id: identifier,
  name: text,
  kind: v.picklist(["medicine", "fluid", "energy"]),
  strengths: v.array(strength),
  incompatibilities: v.array(note),
  uses: v.pipe(v.array(use), v.minLength(1, "has no use")),
}) satisfies v.GenericSchema<unknown, Medicine>;

/** The shape of a formulary; what the parts must mean together is checked after it. */
export const formularySchema: v.GenericSchema<unknown, Formulary> = v.strictObject({
  id: identifier,
  version: text,
  title: text,
  signed: v.boolean(),
  medicines: v.array(medicine),
  deviceEnergiesJ: v.array(positive),
  sources: v.array(sourceSchema),
});
