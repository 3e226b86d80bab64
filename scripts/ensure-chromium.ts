// `npm test` brings its own browser: one that is here already, or Debian's chromium package.
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";

const installed = "/usr/bin/chromium";

function run(command: readonly string[]): boolean {
  const [program = "", ...args] = command;
  return spawnSync(program, args, { stdio: "inherit" }).status === 0;
}

function has(program: string): boolean {
  return spawnSync(program, ["--version"], { stdio: "ignore" }).error === undefined;
}

/** Empty where a browser is ready, else what the person has to do. */
function ensureChromium(): string {
  const chosen = process.env.CHROMIUM;
  if (chosen !== undefined && chosen !== "") {
    return existsSync(chosen) ? "" : `CHROMIUM names ${chosen}, and there is no such file.`;
  }
  if (existsSync(installed)) return "";
  const ask =
    "Install Chromium and set CHROMIUM to its path, for example CHROMIUM=/opt/chromium/chrome npm test";
  if (!has("apt-get")) return `The tests need Chromium and this is not a Debian system. ${ask}`;
  const isRoot = process.getuid?.() === 0;
  if (!isRoot && !has("sudo")) {
    return `The tests need Chromium, and only root may install it. As root: apt-get install chromium. ${ask}`;
  }
  console.log("The tests need a browser: installing Debian's chromium.");
  const asRoot = isRoot ? [] : ["sudo"];
  const done =
    run([...asRoot, "apt-get", "update", "-qq"]) &&
    run([
      ...asRoot,
      "env",
      "DEBIAN_FRONTEND=noninteractive",
      "apt-get",
      "install",
      "-y",
      "-qq",
      "--no-install-recommends",
      "chromium",
    ]);
  return done && existsSync(installed) ? "" : `Installing Chromium failed; apt-get says why above. ${ask}`;
}

const trouble = ensureChromium();
if (trouble !== "") {
  console.error(trouble);
  process.exitCode = 1;
}
