/** Writes what follows from the schema of events: `npm run generate -w packages/records`. */
import { mkdirSync, writeFileSync } from "node:fs";
import { generatedFiles } from "./generated-files.ts";

for (const [path, text] of Object.entries(generatedFiles)) {
  const url = new URL(`../../${path}`, import.meta.url);
  mkdirSync(new URL(".", url), { recursive: true });
  writeFileSync(url, text);
}
