import { describe, expect, it } from "vitest";
import { buildTransport, type DataSet } from "./build-transport.ts";
import { readTransport, type TransportFile } from "./read-transport.ts";

const invented: DataSet = {
  member: "INVENTED",
  columns: [
    { name: "SEQN", length: 8 },
    { name: "SITE", length: 5, text: true },
    { name: "BMXWT", length: 8 },
    { name: "CODE", length: 3 },
  ],
  rows: [
    [1, "north", 12.3, 2],
    [2, "s e", ".", "A"],
    [3, "", 0.1, -1],
  ],
};

function read(bytes: Uint8Array): TransportFile {
  const result = readTransport(bytes);
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
}

function issue(bytes: Uint8Array): unknown {
  const result = readTransport(bytes);
  return result.ok ? "read" : result.error;
}

const columnsOf = (file: TransportFile) => Object.fromEntries(file.columns);
const expected = {
  SEQN: [1, 2, 3],
  SITE: ["north", "s e", ""],
  BMXWT: [12.3, undefined, 0.1],
  CODE: [2, undefined, -1],
};

describe("readTransport()", () => {
  it("reads numbers, texts, short numbers and missing codes", () => {
    const file = read(buildTransport([invented]));
    expect(file.member).toBe("INVENTED");
    expect(file.rows).toBe(3);
    expect(columnsOf(file)).toEqual(expected);
  });

  it("reads descriptors of 136 bytes, as some systems write them", () => {
    expect(columnsOf(read(buildTransport([invented], { namestrLength: 136 })))).toEqual(expected);
  });

  it("reads bytes that begin inside a larger buffer", () => {
    const bytes = buildTransport([invented]);
    const larger = new Uint8Array(bytes.length + 13);
    larger.set(bytes, 13);
    expect(columnsOf(read(larger.subarray(13)))).toEqual(expected);
  });

  // One row is 24 bytes: 10 rows fill three records of 80 exactly, 11 to 13 leave a padding of up to two rows of blanks.
  it.each([0, 1, 3, 10, 11, 13, 100])("gives %i rows and none of the padding", (rows) => {
    const set = { ...invented, rows: Array.from({ length: rows }, (_, i) => [i, "x", i / 8, i]) };
    const file = read(buildTransport([set]));
    expect(file.rows).toBe(rows);
    expect(file.columns.get("BMXWT")).toEqual(set.rows.map((_, i) => i / 8));
  });

  it("drops rows of nothing but blanks at the end and keeps those before", () => {
    const texts: DataSet = {
      member: "TEXTS",
      columns: [{ name: "A", length: 10, text: true }],
      rows: [["one"], [""], ["three"], [""], [""]],
    };
    expect(columnsOf(read(buildTransport([texts])))).toEqual({ A: ["one", "", "three"] });
  });

  it("reads the first of two data sets and stops where the second begins", () => {
    const second = { ...invented, member: "SECOND", rows: [[9, "other", 99, 9]] };
    const file = read(buildTransport([invented, second]));
    expect(file.member).toBe("INVENTED");
    expect(columnsOf(file)).toEqual(expected);
  });

  it("returns not-a-transport-file for anything else, with what it begins with", () => {
    const begin = (text: string) => issue(new TextEncoder().encode(text));
    expect(begin("<!DOCTYPE html><html><head><title>Page not found")).toEqual({
      type: "not-a-transport-file",
      found: "<!DOCTYPE html><html><he",
    });
    expect(begin("\u0000\u0001PK")).toEqual({ type: "not-a-transport-file", found: "..PK" });
    expect(begin("")).toEqual({ type: "not-a-transport-file", found: "" });
  });

  it("returns version-not-supported for version 8", () => {
    const bytes = new TextEncoder().encode(
      "HEADER RECORD*******LIBV8   HEADER RECORD!!!!!!!".padEnd(800, "0"),
    );
    expect(issue(bytes)).toEqual({ type: "version-not-supported", found: "version 8" });
  });

  it("returns truncated wherever a file was cut before its rows begin", () => {
    const bytes = buildTransport([invented]);
    // 3 library + 5 member records, 4 x 140 bytes of descriptors in 7 records, and the header of the rows.
    const rowsBegin = 80 * (3 + 5 + 7 + 1);
    for (let length = 80; length < rowsBegin; length += 7) {
      expect(issue(bytes.subarray(0, length)), `${length} bytes`).toMatchObject({ type: "truncated" });
    }
  });

  it("returns truncated for a file cut among its rows, since every record is of 80 bytes", () => {
    const bytes = buildTransport([
      { ...invented, rows: Array.from({ length: 20 }, (_, i) => [i, "x", i, i]) },
    ]);
    expect(issue(bytes.subarray(0, bytes.length - 30))).toEqual({ type: "truncated", at: bytes.length - 30 });
  });
});
