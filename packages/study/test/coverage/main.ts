// Writes coverage-log.md and the same table into docs/statistics.md: npm run coverage-of-intervals -w packages/study.
import { readFileSync, writeFileSync } from "node:fs";
import { simulateCoverage } from "./simulate-coverage.ts";

const studies = 2000;
const seed = 20260101;
const rows = Array.from(
  simulateCoverage({ studies, seed }),
  ([name, percent]) => `| ${name} | ${percent.toFixed(1)} |`,
);
writeFileSync(
  new URL("coverage-log.md", import.meta.url),
  `# Coverage of nominal 95 % intervals

${studies} simulated studies each, seed ${seed}; what is drawn is in interval-trials.ts. By chance alone a true 95.0 % shows as 94.0
to 96.0 in 19 of 20 rows. Written by \`npm run coverage-of-intervals -w packages/study\`.

| interval | holds the truth in, % |
| --- | --: |
${rows.join("\n")}
`,
);

const page = new URL("../../../../docs/statistics.md", import.meta.url);
const table = `| interval | holds the truth in, % |\n| --- | --: |\n${rows.join("\n")}\n`;
writeFileSync(
  page,
  readFileSync(page, "utf8").replace(/\| interval \| holds the truth in, % \|\n(\|.*\n)+/, () => table),
);
