// `npm test` brings its own browser: one that is here already, or Debian's chromium package.
import { existsSync } from "node:fs";
import { ensureDebianPackage } from "./ensure-debian-package.ts";

const installed = "/usr/bin/chromium";

/** Empty where a browser is ready, else what the person has to do. */
function ensureChromium(): string {
  const chosen = process.env.CHROMIUM;
  if (chosen !== undefined && chosen !== "") {
    return existsSync(chosen) ? "" : `CHROMIUM names ${chosen}, and there is no such file.`;
  }
  return ensureDebianPackage({
    name: "chromium",
    need: "The tests need a browser",
    ask: "Install Chromium and set CHROMIUM to its path, for example CHROMIUM=/opt/chromium/chrome npm test",
    isHere: () => existsSync(installed),
  });
}

const trouble = ensureChromium();
if (trouble !== "") {
  console.error(trouble);
  process.exitCode = 1;
}
