import { toJsonSchema } from "@valibot/to-json-schema";
import { caseEventSchema } from "../../src/case/case-event-schema.ts";

/** The shape of a case event as JSON Schema, for whoever reads or sends events. What it cannot say, `readCaseEvent` does. */
const { $schema, ...json } = toJsonSchema(caseEventSchema, {
  typeMode: "input",
  errorMode: "ignore",
  target: "draft-07",
});

/** By its path within the package. */
export const generatedFiles: Readonly<Record<string, string>> = {
  "schemas/case-event.schema.json": `${JSON.stringify({ $schema, title: "A case event of Steelyard", ...json }, undefined, 2)}\n`,
};
