import { rename, rm, writeFile } from "node:fs/promises";
import { fileFailure } from "../file-failure.ts";

/** A finished result to a file, whole or not at all, or to standard output where the path is "-". */
export async function writeResult(path: string, text: string): Promise<void> {
  if (path === "-") {
    process.stdout.write(text);
    return;
  }
  const part = `${path}.part`;
  try {
    await writeFile(part, text);
    await rename(part, path);
  } catch (error) {
    await rm(part, { force: true });
    throw fileFailure("write", path, error);
  }
}
