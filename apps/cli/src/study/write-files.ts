import { mkdir, rename, rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { fileFailure } from "../file-failure.ts";

/** Files into a folder, which is made; none takes its place before all are written. */
export async function writeFiles(
  folder: string,
  files: readonly { readonly name: string; readonly content: string | Uint8Array }[],
): Promise<void> {
  let current = folder;
  try {
    await mkdir(folder, { recursive: true });
    for (const { name, content } of files) {
      current = join(folder, name);
      await writeFile(`${current}.part`, content);
    }
    for (const { name } of files) {
      current = join(folder, name);
      await rename(`${current}.part`, current);
    }
  } catch (error) {
    await Promise.all(files.map(({ name }) => rm(join(folder, `${name}.part`), { force: true })));
    throw fileFailure("write", current, error);
  }
}
