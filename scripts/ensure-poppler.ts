// `npm test` brings poppler's pdftoppm and pdftotext, which look at the papers as a printer and a screen reader do.
import { spawnSync } from "node:child_process";
import { ensureDebianPackage } from "./ensure-debian-package.ts";

const trouble = ensureDebianPackage({
  name: "poppler-utils",
  need: "The tests of the papers need pdftoppm and pdftotext",
  ask: "Install poppler's tools and put them on the path.",
  isHere: () =>
    ["pdftoppm", "pdftotext"].every(
      (tool) => spawnSync(tool, ["-v"], { stdio: "ignore" }).error === undefined,
    ),
});
if (trouble !== "") {
  console.error(trouble);
  process.exitCode = 1;
}
