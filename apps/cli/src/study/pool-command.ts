import { readFile } from "node:fs/promises";
import { readSiteSummary, type SiteSummary } from "@steelyard/study/pooling";
import { poolingTable } from "@steelyard/study/report";
import { Command } from "commander";
import { CommandFailure, EXIT } from "../exit-status.ts";
import { fileFailure } from "../file-failure.ts";
import { EXIT_STATUS_HELP } from "../help-text.ts";

const HELP = `
A site that keeps its rows to itself hands over site-summary.json, which
steelyard study writes beside its report: sums by method, and no child. What is
pooled from these files is what would be pooled from the rows.

${EXIT_STATUS_HELP}`;

/** `steelyard study pool a/site-summary.json b/site-summary.json c/site-summary.json`. */
export function createPoolCommand(): Command {
  return new Command("pool")
    .description("Pool the summary files of three sites or more.")
    .argument("<files...>", "the summary files")
    .addHelpText("after", HELP)
    .action(poolFiles);
}

async function poolFiles(paths: readonly string[]): Promise<void> {
  const summaries: SiteSummary[] = [];
  for (const path of paths) {
    const text = await readFile(path, "utf8").catch((error: unknown) => {
      throw fileFailure("read", path, error);
    });
    const summary = readSiteSummary(text);
    if (!summary.ok)
      throw refused(
        path,
        summary.error.type === "not-a-site-summary"
          ? `${summary.error.at} is ${summary.error.found}`
          : summary.error.type.replaceAll("-", " "),
      );
    if (summaries.some(({ site }) => site === summary.value.site))
      throw refused(path, `site "${summary.value.site}" is there already`);
    summaries.push(summary.value);
  }
  const table = poolingTable(summaries);
  if (table === undefined)
    throw new CommandFailure(
      EXIT.notServed,
      `Pooling needs three sites or more, and there ${summaries.length === 1 ? "is 1" : `are ${summaries.length}`}.`,
    );
  const widths = table.head.map((cell, i) =>
    Math.max(cell.length, ...table.rows.map((row) => (row[i] ?? "").length)),
  );
  for (const row of [table.head, ...table.rows])
    process.stdout.write(
      `${row
        .map((cell, i) => cell.padEnd(widths[i] as number))
        .join("  ")
        .trimEnd()}\n`,
    );
}

function refused(path: string, why: string): CommandFailure {
  return new CommandFailure(
    EXIT.notServed,
    `Cannot use ${path} as a site summary: ${why}. Nothing was computed.`,
  );
}
