import { gzipSync } from "node:zlib";
import type { Plugin } from "vite";

/** The part of a bundler's chunk that counts here. */
export interface Chunk {
  readonly type: string;
  readonly isEntry?: boolean;
  readonly imports?: readonly string[];
  readonly code?: string;
}

/** Compressed size of every script that the page needs before its first answer, in bytes. */
export function firstScreenBytes(bundle: Readonly<Record<string, Chunk>>): number {
  const needed = new Set<string>();
  const need = (file: string): void => {
    if (needed.has(file)) return;
    needed.add(file);
    bundle[file]?.imports?.forEach(need);
  };
  for (const [file, { isEntry }] of Object.entries(bundle)) if (isEntry === true) need(file);
  return [...needed].reduce((sum, file) => sum + gzipSync(bundle[file]?.code ?? "", { level: 9 }).length, 0);
}

/** Says how large the script of the first screen is, and fails the build when it is too large for a slow phone. */
export function firstScreenBudget({ limitKb }: { readonly limitKb: number }): Plugin {
  return {
    name: "steelyard:first-screen-budget",
    apply: "build",
    generateBundle: {
      order: "post",
      handler(_options, bundle) {
        const kb = Math.round(firstScreenBytes(bundle) / 100) / 10;
        if (kb > limitKb) this.error(`first-screen script ${kb} kB gzip is over its budget of ${limitKb} kB`);
        process.stdout.write(`first-screen script: ${kb} kB gzip, budget ${limitKb} kB\n`);
      },
    },
  };
}
