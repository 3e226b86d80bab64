import {
  applyOverlay,
  compareFormularies,
  describeDifference,
  writeFormulary,
} from "@steelyard/formulary/ownership";
import { wrap } from "../wrap.ts";
import { faultyFile, loadFormulary, loadJson } from "./load-formulary.ts";
import { writeResult } from "./write-result.ts";

/** `steelyard formulary overlay base overlay.json -o site.json`. */
export async function overlayFile(
  base: string,
  overlay: string,
  { output }: { readonly output: string },
): Promise<void> {
  const { formulary } = await loadFormulary(base);
  const { value } = await loadJson(overlay);
  const applied = applyOverlay(formulary, value);
  if (!applied.ok) throw faultyFile(overlay, applied.error);
  await writeResult(output, writeFormulary(applied.value));
  const differences = compareFormularies(formulary, applied.value).map(
    (difference) => `* ${describeDifference(difference)}`,
  );
  const lines = [...differences, "The result is not signed."];
  process.stderr.write(`${lines.map((line) => wrap(line, { hanging: "  " })).join("\n")}\n`);
}
