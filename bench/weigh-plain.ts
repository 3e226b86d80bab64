// The peer of `steelyard weigh`: the same libraries read and write the same file, and nothing is computed.
import { createReadStream, createWriteStream } from "node:fs";
import { Transform } from "node:stream";
import { pipeline } from "node:stream/promises";
import { parse } from "csv-parse";
import { stringify } from "csv-stringify/sync";

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
