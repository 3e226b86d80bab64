import { type ConversionConfig, toJsonSchema } from "@valibot/to-json-schema";
import type * as v from "valibot";
import { caseEventSchema } from "../../src/case/case-event-schema.ts";
import { documentsInForceSchema, heldDocumentsSchema } from "../../src/sync/wire/document-schema.ts";
import {
  pullAnswerSchema,
  pullQuerySchema,
  pushAnswerSchema,
  pushRequestSchema,
} from "../../src/sync/wire/sync-schema.ts";

const config: ConversionConfig = { typeMode: "input", errorMode: "ignore", target: "draft-07" };

/** The shape of a case event as JSON Schema, for whoever reads or sends events. What it cannot say, `readCaseEvent` does. */
const { $schema, ...caseEvent } = toJsonSchema(caseEventSchema, config);

/** What device and server say to each other, each under its name. */
const wire = {
  pushRequest: pushRequestSchema,
  pushAnswer: pushAnswerSchema,
  pullQuery: pullQuerySchema,
  pullAnswer: pullAnswerSchema,
  documentsQuery: heldDocumentsSchema,
  documentsAnswer: documentsInForceSchema,
};
const definitions = Object.fromEntries(
  Object.entries(wire).map(([name, schema]) => {
    const { $schema: _, ...json } = toJsonSchema(schema as v.GenericSchema, config);
    return [name, json];
  }),
);

const write = (value: unknown) => `${JSON.stringify(value, undefined, 2)}\n`;

/** By its path within the package. */
export const generatedFiles: Readonly<Record<string, string>> = {
  "schemas/case-event.schema.json": write({ $schema, title: "A case event of Steelyard", ...caseEvent }),
  "schemas/sync.schema.json": write({
    $schema,
    title: "Sync between device and server of Steelyard",
    definitions,
  }),
};
