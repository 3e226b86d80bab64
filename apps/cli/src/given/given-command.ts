import { type TrackedDoses, trackGivenDoses } from "@steelyard/core/dosing";
import { cautionBlock } from "@steelyard/core/wording";
import type { Command } from "commander";
import { weighOrFail } from "../child/child-command.ts";
import { type ChildTexts, readChild, withChildOptions } from "../child/read-child.ts";
import {
  loadSheetFormulary,
  type SheetFormularyOptions,
  withFormularyOptions,
} from "../formulary/sheet-formulary.ts";
import { EXIT_STATUS_HELP, helpCautions } from "../help-text.ts";
import { wrap } from "../wrap.ts";
import { formatGiven } from "./format-given.ts";
import { readGiven } from "./read-given.ts";

const HELP = `
The table has a line of column names: line, amount, unit, at. "line" is the id of
a line of the sheet (adrenaline.arrest), "at" a time of day (14:05) or minutes on
one clock. Past midnight, go on with minutes. A JSON file is a list of
{ "lineId", "dose": { "amount", "unit" }, "atMinutes" }.

Examples:
  steelyard given doses.csv --weight-kg 18
  steelyard given doses.csv --length-cm 136 --arm-mm 190 --formulary signed.json

${EXIT_STATUS_HELP}`;

/** `steelyard given doses.csv --weight-kg 18`. */
export function defineGivenCommand(command: Command): void {
  command.argument("<doses>", 'the doses, as CSV or JSON; "-" is standard input');
  withFormularyOptions(withChildOptions(command))
    .option("--json", "print the result as JSON")
    .addHelpText("after", () => `${HELP}\n${helpCautions()}`)
    .action(printGiven);
}

type GivenOptions = ChildTexts & SheetFormularyOptions & { readonly json?: true };

async function printGiven(
  path: string,
  { json, formulary, overlay, choose, ...texts }: GivenOptions,
): Promise<void> {
  const read = await readChild(texts, { example: "steelyard given doses.csv --weight-kg 18" });
  const loaded = await loadSheetFormulary({
    ...(formulary !== undefined && { formulary }),
    ...(overlay && { overlay }),
    ...(choose && { choose }),
  });
  const { given, clock } = await readGiven(path);
  const { weights } = weighOrFail(read);
  const tracked: TrackedDoses = trackGivenDoses({ formulary: loaded.formulary, weights, given });
  for (const note of loaded.notes) process.stderr.write(`${wrap(note, { hanging: "  " })}\n`);
  if (json) {
    const versions = {
      formulary: loaded.formulary.version,
      formularySigned: loaded.formulary.signed,
      formularyFingerprint: loaded.fingerprint,
    };
    process.stdout.write(`${JSON.stringify({ ...tracked, versions }, undefined, 2)}\n`);
    return;
  }
  const { title, lines } = cautionBlock();
  process.stdout.write(formatGiven({ tracked, clock, weights, loaded }));
  process.stderr.write(`${wrap(`${title}: ${lines.join(" ")}`, { hanging: "  " })}\n`);
}
