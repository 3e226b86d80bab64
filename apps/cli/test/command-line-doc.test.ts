import { spawnSync } from "node:child_process";
import { mkdirSync, readFileSync, symlinkSync, writeFileSync } from "node:fs";
import { delimiter, dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";
import { BIN, temporaryFolder } from "./run-steelyard.ts";

const PAGE = fileURLToPath(new URL("../../../docs/command-line.md", import.meta.url));

/** The fenced blocks of the page that are run (`console`) or written to a file first (`csv name`). */
const BLOCK = /^```(?<kind>console|csv)(?: (?<name>\S+))?\n(?<body>.*?)^```$/gms;

/** With STEELYARD_UPDATE_DOCS set, writes what the commands print into the page instead of comparing. */
const update = process.env.STEELYARD_UPDATE_DOCS !== undefined;

it("docs/command-line.md prints exactly what it shows", { timeout: 180_000 }, () => {
  const folder = temporaryFolder();
  mkdirSync(join(folder.path, "bin"));
  symlinkSync(BIN, join(folder.path, "bin", "steelyard"));
  const env = {
    ...process.env,
    PATH: [join(folder.path, "bin"), dirname(process.execPath), process.env.PATH].join(delimiter),
  };
  let commands = 0;
  const page = readFileSync(PAGE, "utf8");
  const ran = page.replaceAll(BLOCK, (block, _kind, _name, _body, ...rest) => {
    const { kind, name = "", body } = rest.at(-1) as { kind: string; name?: string; body: string };
    if (kind === "csv") {
      folder.write(name, body);
      return block;
    }
    const shown = body
      .split("\n")
      .filter((line) => line.startsWith("$ "))
      .map((line) => {
        commands++;
        const shell = spawnSync("bash", ["-c", `exec 2>&1; ${line.slice(2)}`], {
          cwd: folder.path,
          env,
          encoding: "utf8",
        });
        return `${line}\n${shell.stdout}`;
      });
    return `\`\`\`console\n${shown.join("")}\`\`\``;
  });
  expect(commands).toBeGreaterThan(5);
  if (update) writeFileSync(PAGE, ran);
  else expect(ran, "set STEELYARD_UPDATE_DOCS=1 to write what is printed now into the page").toBe(page);
});
