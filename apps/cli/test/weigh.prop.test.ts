import { Buffer } from "node:buffer";
import { Writable } from "node:stream";
import { defaultBodyModel } from "@steelyard/core/body";
import { parse } from "csv-parse/sync";
import { stringify } from "csv-stringify/sync";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { detectDialect } from "../src/weigh/csv-dialect.ts";
import { emptyTally } from "../src/weigh/tally.ts";
import { weighStream } from "../src/weigh/weigh-stream.ts";

/** Weighs bytes in memory, handed over in pieces. */
async function weighBytes(input: Buffer, pieceBytes: number): Promise<Buffer> {
  const written: Buffer[] = [];
  const stream = new Writable({
    write(chunk: Buffer, _encoding, done) {
      written.push(chunk);
      done();
    },
  });
  async function* chunks(): AsyncGenerator<Buffer> {
    for (let at = 0; at < input.length; at += pieceBytes) yield input.subarray(at, at + pieceBytes);
  }
  const nothing = async (): Promise<void> => {};
  await weighStream({
    source: {
      dialect: detectDialect(input.toString("latin1")),
      chunks: chunks(),
      size: input.length,
      bytesRead: () => 0,
      close: () => {},
    },
    sink: { stream, name: "memory", commit: nothing, discard: nothing },
    tally: emptyTally(),
    model: defaultBodyModel(),
    signal: new AbortController().signal,
    onHeader: () => {},
  });
  return Buffer.concat(written);
}

const number = fc.integer({ min: 0, max: 4000 }).map((n) => String(n / 10));
const awkward = fc.string({
  unit: fc.constantFrom('"', ",", ";", "\n", "\r", "\t", " ", "=", "1", "é", "\u0000", "x"),
});
const cell = fc.oneof(
  number,
  awkward,
  fc.string({ unit: "binary", maxLength: 8 }),
  fc.constantFrom("", "NA", "1e9", "-3"),
);

describe("weigh on any cells", () => {
  it("writes one row for each row read, keeps every cell, and weighs exactly the rows it does not mark", async () => {
    const table = fc.array(fc.tuple(cell, cell, cell, cell), { maxLength: 8 });
    await fc.assert(
      fc.asyncProperty(
        table,
        fc.constantFrom(",", ";", "\t"),
        fc.constantFrom("\n", "\r\n"),
        fc.integer({ min: 1, max: 64 }),
        async (rows, delimiter, lineEnd, pieceBytes) => {
          const header = ["remark", "lying_length_cm", "arm_mm", "sex"];
          const text = stringify([header, ...rows], { delimiter, record_delimiter: lineEnd, quoted: true });
          const bytes = Buffer.from(text);
          const output = await weighBytes(bytes, pieceBytes);
          const before: string[][] = parse(bytes, { delimiter });
          const after: string[][] = parse(output, { delimiter });
          expect(after).toHaveLength(before.length);
          for (const [i, row] of after.entries()) {
            expect(row.slice(0, 4)).toEqual(before[i]);
            expect(row).toHaveLength(9);
          }
          for (const [, , , , total = "", low = "", high = "", , notes = ""] of after.slice(1)) {
            expect(total === "" ? notes : total).not.toBe("");
            if (total === "") continue;
            const [lowKg, totalKg, highKg] = [low, total, high].map((kg) => Number(kg.replace(",", ".")));
            expect(lowKg).toBeLessThanOrEqual(totalKg as number);
            expect(totalKg).toBeLessThanOrEqual(highKg as number);
          }
        },
      ),
      { seed: 20261125, numRuns: 300 },
    );
  });

  it("reads the same whichever way the bytes arrive", async () => {
    const input = Buffer.from('lying_length_cm,arm_mm,remark\r\n136,190,"a ""b"",\r\nc"\r\n85.5,150,é\r\n');
    const whole = await weighBytes(input, input.length);
    for (let pieceBytes = 1; pieceBytes < 12; pieceBytes++) {
      expect((await weighBytes(input, pieceBytes)).equals(whole)).toBe(true);
    }
  });
});
