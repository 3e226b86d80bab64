// The peer of `steelyard weigh`: the same libraries read and write the same file, and nothing is computed.
import { createReadStream, createWriteStream } from "node:fs";
import { createRequire } from "node:module";
import { Transform } from "node:stream";
import { pipeline } from "node:stream/promises";

// The libraries of the command itself, which the root does not depend on.
const fromCommand = createRequire(new URL("../apps/cli/package.json", import.meta.url));
const { parse } = fromCommand("csv-parse") as { parse(options: { encoding: string }): Transform };
const { stringify } = fromCommand("csv-stringify/sync") as { stringify(rows: readonly string[][]): string };

const [, , input = "", output = ""] = process.argv;
let batch: string[][] = [];
await pipeline(
  createReadStream(input),
  parse({ encoding: "latin1" }),
  new Transform({
    writableObjectMode: true,
    writableHighWaterMark: 512,
    transform(cells: string[], _encoding, done) {
      cells.push("28.4", "25.98", "31.23", "29.84", "");
      batch.push(cells);
      if (batch.length < 512) return done();
      const rows = batch;
      batch = [];
      return done(null, stringify(rows));
    },
    flush(done) {
      done(null, stringify(batch));
    },
  }),
  createWriteStream(output),
);
