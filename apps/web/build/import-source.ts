import { join } from "node:path";
import { runnerImport } from "vite";

/** Runs a module of the app while building. */
export async function importSource<T>({
  root,
  path,
}: {
  readonly root: string;
  readonly path: string;
}): Promise<T> {
  const { module } = await runnerImport<T>(join(root, path), {
    root,
    configFile: false,
    logLevel: "error",
    oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
  });
  return module;
}
