import { gzipSync } from "node:zlib";
import type { Plugin } from "vite";

/** The part of a bundler's output that counts here. */
export interface Output {
  readonly type: string;
  readonly isEntry?: boolean;
  readonly imports?: readonly string[];
  readonly code?: string;
  readonly source?: string | Uint8Array;
}
type Bundle = Readonly<Record<string, Output>>;

/** Compressed size of every script that the page needs before its first answer, in bytes. */
export function firstScreenBytes(bundle: Bundle): number {
  const needed = new Set<string>();
  const need = (file: string): void => {
    if (needed.has(file)) return;
    needed.add(file);
    bundle[file]?.imports?.forEach(need);
  };
  for (const [file, { isEntry }] of Object.entries(bundle)) if (isEntry === true) need(file);
  return [...needed].reduce((sum, file) => sum + bytesOf(bundle[file]), 0);
}

/** Parts that are large for what they draw, and that nothing but their own screen waits for: they have a budget of their own. */
const charts = /(^|\/)(paper|paper-worker|study|study-worker)-[^/]*\.js$/;

/** Compressed size of all that is kept for working offline, typefaces and charts left out, in bytes. */
export function shellBytes(bundle: Bundle): number {
  return bytesWhere(bundle, (file) => !/\.woff2?$/.test(file) && !charts.test(file));
}

/** Compressed size of what draws papers and judges studies, in bytes. */
export function chartBytes(bundle: Bundle): number {
  return bytesWhere(bundle, (file) => charts.test(file));
}

function bytesWhere(bundle: Bundle, counts: (file: string) => boolean): number {
  return Object.entries(bundle)
    .filter(([file]) => counts(file))
    .reduce((sum, [, output]) => sum + bytesOf(output), 0);
}

function bytesOf(output: Output | undefined): number {
  return gzipSync(output?.code ?? output?.source ?? "", { level: 9 }).length;
}

/** Says how large the script of the first screen and the whole page are, and fails the build when one is over its budget. */
export function firstScreenBudget({
  limitKb,
  shellLimitKb,
  chartLimitKb,
}: {
  readonly limitKb: number;
  readonly shellLimitKb: number;
  readonly chartLimitKb: number;
}): Plugin {
  return {
    name: "steelyard:first-screen-budget",
    apply: "build",
    generateBundle: {
      order: "post",
      handler(_options, bundle) {
        const checks = [
          { what: "first-screen script", bytes: firstScreenBytes(bundle), limit: limitKb },
          {
            what: "whole page without typefaces, paper and study",
            bytes: shellBytes(bundle),
            limit: shellLimitKb,
          },
          { what: "paper and study", bytes: chartBytes(bundle), limit: chartLimitKb },
        ];
        for (const { what, bytes, limit } of checks) {
          const kb = Math.round(bytes / 100) / 10;
          if (kb > limit) this.error(`${what} ${kb} kB gzip is over its budget of ${limit} kB`);
          process.stdout.write(`${what}: ${kb} kB gzip, budget ${limit} kB\n`);
        }
      },
    },
  };
}
