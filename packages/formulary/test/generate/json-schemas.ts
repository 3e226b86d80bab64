import { toJsonSchema } from "@valibot/to-json-schema";
import type * as v from "valibot";
import { overlaySchema } from "../../src/ownership/overlay.ts";
import { citations, note, sourceSchema } from "../../src/schema/citation-schema.ts";
import { formularySchema, medicineSchema } from "../../src/schema/formulary-schema.ts";
import { dose, doseRule, doseUnit, rule, simpleRule } from "../../src/schema/rule-schema.ts";
import { preparation, strength } from "../../src/schema/strength-schema.ts";
import { use } from "../../src/schema/use-schema.ts";

/** Parts that occur in many places, written once. */
const definitions = {
  medicine: medicineSchema,
  use,
  strength,
  preparation,
  rule,
  simpleRule,
  doseRule,
  dose,
  doseUnit,
  citations,
  note,
  source: sourceSchema,
};

/**
 * The shape of a formulary file and of an overlay as JSON Schema, so that an editor can complete and mark as one types.
 *
 * What a schema cannot say (units that fit, bands without gaps, sources that exist) is left to `steelyard formulary check`.
 */
export const jsonSchemas: Readonly<Record<string, string>> = {
  "formulary.schema.json": written(formularySchema, "A formulary of Steelyard"),
  "overlay.schema.json": written(overlaySchema, "A site's changes to a formulary of Steelyard"),
};

function written(schema: v.GenericSchema, title: string): string {
  const { $schema, ...json } = toJsonSchema(schema, {
    typeMode: "input",
    errorMode: "ignore",
    target: "draft-07",
    definitions: schema === formularySchema ? definitions : {},
  });
  return `${JSON.stringify({ $schema, title, ...json }, undefined, 2)}\n`;
}
