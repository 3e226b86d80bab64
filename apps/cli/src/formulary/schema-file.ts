import formularySchema from "@steelyard/formulary/formulary.schema.json" with { type: "json" };
import overlaySchema from "@steelyard/formulary/overlay.schema.json" with { type: "json" };
import { writeResult } from "./write-result.ts";

/** `steelyard formulary schema [--overlay]`: for editors that complete and mark JSON as one types. */
export async function schemaFile({
  overlay,
  output,
}: {
  readonly overlay?: true;
  readonly output: string;
}): Promise<void> {
  await writeResult(output, `${JSON.stringify(overlay ? overlaySchema : formularySchema, undefined, 2)}\n`);
}
