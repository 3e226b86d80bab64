import type { Command } from "commander";
import { EXIT_STATUS_HELP, helpCautions } from "../help-text.ts";
import { checkFile } from "./check-file.ts";
import { csvFile } from "./csv-file.ts";
import { diffFiles } from "./diff-files.ts";
import { DRAFT } from "./load-formulary.ts";
import { overlayFile } from "./overlay-file.ts";
import { schemaFile } from "./schema-file.ts";
import { showFile } from "./show-file.ts";
import { signFile, verifyFile } from "./sign-file.ts";

const HELP = `
Where a formulary is asked for, "${DRAFT}" means the unsigned draft that ships.
A file with a fault is refused whole, every fault listed with its place.

Examples, in the order in which a site takes ownership:
  steelyard formulary show draft --medicine adrenaline
  steelyard formulary csv draft -o doses.csv
  steelyard formulary csv draft --from doses.csv -o ours.json
  steelyard formulary overlay draft north-site.json -o ours.json
  steelyard formulary diff draft ours.json
  steelyard formulary check ours.json
  steelyard formulary sign ours.json --name "A. Example" --role pharmacist \\
    --date 2026-11-25 -o signed.json
  steelyard formulary verify signed.json

${EXIT_STATUS_HELP}`;

const OUTPUT = ["-o, --output <file>", 'the file to write; "-" is standard output', "-"] as const;

/** `steelyard formulary check | show | diff | sign | verify | overlay | csv | schema`. */
export function defineFormularyCommand(command: Command): void {
  command
    .helpCommand("help [command]", "print the help of a command")
    .addHelpText("after", () => `${HELP}\n${helpCautions()}`);
  command
    .command("check")
    .description("List every fault of a formulary, then what a reviewer should look at.")
    .argument("[file]", "the formulary", DRAFT)
    .option("--step <percent>", "show doses that step by more than this from one band to the next", "20")
    .action(checkFile);
  command
    .command("show")
    .description("Print a formulary to read and to review.")
    .argument("[file]", "the formulary", DRAFT)
    .option("--medicine <id...>", "only these medicines")
    .action(showFile);
  command
    .command("diff")
    .description("Say what a second formulary changes in a first.")
    .argument("<before>", "the first formulary")
    .argument("<after>", "the second formulary")
    .action(diffFiles);
  command
    .command("sign")
    .description("Sign a formulary that you have reviewed and answer for.")
    .argument("<file>", "the formulary")
    .requiredOption("--name <name>", "who signs")
    .requiredOption("--role <role>", "as what: pharmacist, physician")
    .requiredOption("--date <day>", "the day of the review, as 2026-11-25")
    .option("--second-name <name>", "who reviewed it independently as well: high-alert medicines need that")
    .option("--second-role <role>", "as what")
    .option("--second-date <day>", "the day of that review")
    .option(...OUTPUT)
    .action(signFile);
  command
    .command("verify")
    .description("See whether a sign-off holds: one edited byte breaks it.")
    .argument("<file>", "the signed formulary")
    .option("--fingerprint <hex>", "the fingerprint that was kept when it was signed")
    .action(verifyFile);
  command
    .command("overlay")
    .description("Apply a site's changes to a formulary; refused where one no longer fits.")
    .argument("<base>", "the formulary to change")
    .argument("<overlay.json>", "the changes")
    .option(...OUTPUT)
    .action(overlayFile);
  command
    .command("csv")
    .description("Write the doses as a table, or take an edited table back.")
    .argument("[file]", "the formulary", DRAFT)
    .option("--from <doses.csv>", "the edited table to take back")
    .option(...OUTPUT)
    .action(csvFile);
  command
    .command("schema")
    .description("Write the JSON Schema of a formulary file, for editors.")
    .option("--overlay", "that of an overlay instead")
    .option(...OUTPUT)
    .action(schemaFile);
}
