import type { CsvSource } from "./open-source.ts";
import type { Tally } from "./tally.ts";

const EVERY_MS = 500;

/** Shows on standard error how far a long file is; returns the function that ends it. */
export function showProgress({ source, tally }: { source: CsvSource; tally: Tally }): () => void {
  const { isTTY } = process.stderr;
  const timer = setInterval(() => {
    const rows = `${tally.rows.toLocaleString("en-GB")} rows`;
    const part =
      source.size === undefined ? "" : `, ${Math.floor((100 * source.bytesRead()) / source.size)} %`;
    process.stderr.write(isTTY ? `\r${rows}${part}` : `${rows}${part}\n`);
  }, EVERY_MS);
  timer.unref();
  return () => {
    clearInterval(timer);
    if (isTTY) process.stderr.write("\r\u001b[K");
  };
}
