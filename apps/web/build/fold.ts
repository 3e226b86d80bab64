import { relative } from "node:path";
import type { Plugin } from "vite";
import { importSource } from "./import-source.ts";

/**
 * Replaces modules by the values of their exports, computed while building, so that what they are computed from need
 * not be loaded with the page. Every export has to be plain data; `path` is the module's, from the root of the app.
 */
export function fold({ path, names }: { readonly path: string; readonly names: readonly string[] }): Plugin {
  let root: string;
  return {
    name: "steelyard:fold",
    apply: "build",
    enforce: "pre",
    configResolved(config) {
      root = config.root;
    },
    async load(id) {
      if (relative(root, id) !== path) return null;
      const values = await importSource<Readonly<Record<string, unknown>>>({ root, path });
      return names
        .map((name) => {
          const text = JSON.stringify(values[name]);
          if (text === undefined) throw new Error(`${path} has no data under the name ${name}`);
          return `export const ${name} = ${text};`;
        })
        .join("\n");
    },
  };
}
