import { compareFormularies, describeDifference } from "@steelyard/formulary/ownership";
import { wrap } from "../wrap.ts";
import { loadFormulary } from "./load-formulary.ts";

/** `steelyard formulary diff A B`: what B changes, one difference a line. */
export async function diffFiles(before: string, after: string): Promise<void> {
  const [a, b] = [await loadFormulary(before), await loadFormulary(after)];
  const differences = compareFormularies(a.formulary, b.formulary);
  const lines =
    differences.length === 0
      ? [`${a.name} and ${b.name} do not differ.`]
      : [
          `${differences.length === 1 ? "1 difference" : `${differences.length} differences`} from ${a.name} to ${b.name}:`,
          ...differences.map((difference) => `* ${describeDifference(difference)}`),
        ];
  process.stdout.write(`${lines.map((line) => wrap(line, { hanging: "  " })).join("\n")}\n`);
}
