import { readFileSync, writeFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { parse } from "csv-parse/sync";
import { type Pair, technicalError } from "./technical-error.ts";

const usage = `Computes the technical error of measurement from repeated readings.

  npm run repeats -w reference -- --repeats FILE

  --repeats FILE  measurement_repeats.csv: source, observer, child, round, weight_kg, height_cm, muac_mm

Writes reference/repeats-log.md.
`;

/** A pair further apart than this is a slip of the pen: half a hand's breadth of arm, 5 cm of height, 1 kg. */
const measures = [
  { column: "muac_mm", name: "arm, mm", slipsBeyond: 20 },
  { column: "height_cm", name: "height, cm", slipsBeyond: 5 },
  { column: "weight_kg", name: "weight, kg", slipsBeyond: 1 },
] as const;

function main(): void {
  const { values } = parseArgs({ options: { repeats: { type: "string" }, help: { type: "boolean" } } });
  if (values.help || values.repeats === undefined) {
    process.stdout.write(usage);
    process.exitCode = values.help ? 0 : 2;
    return;
  }
  const records: Record<string, string>[] = parse(readFileSync(values.repeats, "utf8"), { columns: true });
  const sources = [...new Set(records.map(({ source }) => source ?? ""))].sort();
  const lines = sources.flatMap((source) =>
    measures.map(({ column, name, slipsBeyond }) => {
      const error = technicalError(
        pairsOf(
          records.filter((record) => record.source === source),
          column,
        ),
        slipsBeyond,
      );
      return `| ${source} | ${name} | ${error.pairs} | ${error.slips} | ${error.classical.toFixed(2)} | ${error.robust.toFixed(2)} |`;
    }),
  );
  writeFileSync(
    new URL("../../repeats-log.md", import.meta.url),
    `# Technical error of measurement within an observer

Written by \`npm run repeats -w reference\`; do not edit. Two rounds by the same observer on the same child. The classical error sets gross slips
aside; the robust one needs no such choice and is the one the model takes for the arm.

| standardisation test | measure | pairs | slips | classical | robust |
| --- | --- | ---: | ---: | ---: | ---: |
${lines.join("\n")}
`,
  );
}

function pairsOf(records: readonly Record<string, string>[], column: string): readonly Pair[] {
  const rounds = new Map<string, number[]>();
  for (const record of records) {
    const key = `${record.observer} ${record.child}`;
    const value = record[column] ? Number(record[column]) : Number.NaN;
    rounds.set(key, [...(rounds.get(key) ?? []), value]);
  }
  return [...rounds.values()].flatMap(([first, second]) =>
    first === undefined || second === undefined || Number.isNaN(first + second)
      ? []
      : [[first, second] as const],
  );
}

try {
  main();
} catch (error) {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  process.exitCode = 1;
}
