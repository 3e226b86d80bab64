import type { AuditFault } from "@steelyard/records/store";
import { type Command, InvalidArgumentError } from "commander";
import { CommandFailure, EXIT } from "../exit-status.ts";
import { EXIT_STATUS_HELP } from "../help-text.ts";
import { type RecordsOptions, withRecords, withSettings } from "./open-records.ts";

const HELP = `
Every entry of the audit log has the hash of the one before it. \`verify\` follows that
chain and compares the cases with what was logged when they came. Keep the last hash
elsewhere: it shows later that nobody wrote the whole log anew.

${EXIT_STATUS_HELP}`;

/** `steelyard audit verify`. */
export function defineAuditCommand(command: Command): void {
  withSettings(
    command.command("verify").description("whether log and cases are as they were written"),
  ).action(verify);
  withSettings(command.command("list").description("the latest entries of the site"))
    .option("--limit <number>", "how many, 1 to 1000", readLimit, 50)
    .action(list);
  command.addHelpText("after", HELP);
}

function readLimit(text: string): number {
  const limit = Number(text);
  if (!/^\d+$/.test(text) || limit < 1 || limit > 1000) {
    throw new InvalidArgumentError("It must be a whole number from 1 to 1000.");
  }
  return limit;
}

async function verify(options: RecordsOptions): Promise<void> {
  await withRecords(options, async ({ store }) => {
    const { sites, faults } = await store.verifyAudit();
    for (const { site, entries, hash } of sites) {
      process.stdout.write(`${site}: ${entries} entries, last hash ${hash}\n`);
    }
    if (faults.length > 0) {
      throw new CommandFailure(EXIT.notServed, faults.map(sentenceOf).join("\n"));
    }
    process.stderr.write("Every entry follows from the one before it, and every case is as it came.\n");
  });
}

function sentenceOf(fault: AuditFault): string {
  switch (fault.type) {
    case "gap":
      return `${fault.site}: entry ${fault.position} is missing or there twice.`;
    case "broken-chain":
      return `${fault.site}: entry ${fault.position} does not follow from the one before it.`;
    case "changed-entry":
      return `${fault.site}: entry ${fault.position} was changed after it was written.`;
    case "wrong-end":
      return `${fault.site}: the log ends at entry ${fault.found}, and the site remembers ${fault.expected}.`;
    case "changed-events":
      return `${fault.site}: cases that entry ${fault.position} took in were changed since.`;
    case "missing-events":
      return `${fault.site}: ${fault.missing} events are missing, and ${fault.purged} were purged by policy.`;
  }
}

async function list({ limit, ...options }: RecordsOptions & { readonly limit: number }): Promise<void> {
  await withRecords(options, async ({ store, settings: { site } }) => {
    for (const { position, at, actor, action, subject } of await store.readAudit({ site, limit })) {
      process.stdout.write(`${position}  ${at}  ${actor}  ${action}  ${subject}\n`);
    }
  });
}
