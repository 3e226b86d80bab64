// Draws the pictures of docs/papers with the real command and poppler: npm run papers
import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, renameSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { repositoryRoot } from "./read-workspaces.ts";

const target = join(repositoryRoot, "docs/papers");
const day = ["--date", "2026-11-25"];

/** Which pages of which paper are shown. */
const shown: readonly {
  readonly name: string;
  readonly args: readonly string[];
  readonly pages: readonly number[];
}[] = [
  { name: "strip", args: ["strip"], pages: [1, 2, 4] },
  { name: "arm-band", args: ["arm-band"], pages: [1] },
  { name: "grid", args: ["grid"], pages: [2] },
  { name: "guide", args: ["guide"], pages: [1] },
  { name: "booklet", args: ["booklet"], pages: [98] },
  {
    name: "child",
    args: ["child", "--length-cm", "136", "--arm-mm", "190", "--problem", "arrest", "seizure"],
    pages: [1, 2],
  },
];

const folder = mkdtempSync(join(tmpdir(), "steelyard-papers-"));
mkdirSync(target, { recursive: true });
for (const { name, args, pages } of shown) {
  const pdf = join(folder, `${name}.pdf`);
  run(process.execPath, [join(repositoryRoot, "apps/cli/src/main.ts"), "paper", ...args, ...day, "-o", pdf]);
  for (const page of pages) {
    const picture = join(folder, `${name}-${page}`);
    const only = ["-f", String(page), "-l", String(page), "-singlefile"];
    run("pdftoppm", ["-png", "-gray", "-r", "80", ...only, pdf, picture]);
    renameSync(`${picture}.png`, join(target, `${name}-${page}.png`));
  }
}
rmSync(folder, { recursive: true });

function run(program: string, args: readonly string[]): void {
  const { status, error } = spawnSync(program, args, { stdio: ["ignore", "inherit", "inherit"] });
  if (status !== 0) throw new Error(`${program} failed: ${error?.message ?? `status ${status}`}`);
}
