/** A data set to be written as a SAS transport file: columns in order, one array of cells per row. */
export interface DataSet {
  readonly member: string;
  readonly columns: readonly {
    readonly name: string;
    /** Bytes of an IBM double, 3 to 8; or of a text. */
    readonly length: number;
    readonly text?: true;
  }[];
  /** Numbers, texts, or a missing code: `.`, `_` or `A` to `Z` in a numeric column. */
  readonly rows: readonly (readonly (number | string)[])[];
}

const latin = (value: string): Uint8Array => Uint8Array.from(value, (c) => c.charCodeAt(0));

/**
 * Builds a SAS transport file (XPORT version 5) record by record, as TS-140 lays it out.
 *
 * @source sas-ts140
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { buildTransport } from "@steelyard/study/transport";
 *
 * const set = { member: "WARD", columns: [{ name: "BMXWT", length: 8 }], rows: [[12.3], ["."]] } as const;
 * assert.equal(buildTransport([set]).length % 80, 0);
 * ```
 */
export function buildTransport(
  sets: readonly DataSet[],
  { namestrLength = 140 }: { namestrLength?: number } = {},
): Uint8Array {
  const records = [
    header("LIBRARY", "0".repeat(30)),
    ...[namesRecord("SASLIB"), stamps],
    ...sets.map((set) => memberRecords(set, namestrLength)),
  ];
  return join(records.map((part) => (typeof part === "string" ? latin(part) : part)));
}

const stamps = "10JUN05:14:09:00".padEnd(80);

function memberRecords({ member, columns, rows }: DataSet, namestrLength: number): Uint8Array {
  const width = columns.reduce((sum, { length }) => sum + length, 0);
  const namestrs = new Uint8Array(columns.length * namestrLength);
  const view = new DataView(namestrs.buffer);
  let position = 0;
  columns.forEach(({ name, length, text }, i) => {
    const at = i * namestrLength;
    view.setInt16(at, text ? 2 : 1);
    view.setInt16(at + 4, length);
    view.setInt16(at + 6, i + 1);
    namestrs.set(latin(name.padEnd(8) + "a label".padEnd(40) + "".padEnd(8)), at + 8);
    view.setInt32(at + 84, position);
    position += length;
  });
  const cells = new Uint8Array(rows.length * width);
  let at = 0;
  for (const row of rows) {
    columns.forEach(({ length, text }, i) => {
      const cell = row[i] as number | string;
      cells.set(text ? latin(String(cell).padEnd(length)) : numericCell(cell).subarray(0, length), at);
      at += length;
    });
  }
  const memberNumbers = `${"0".repeat(17)}1600000000${String(namestrLength).padStart(3, "0")}`;
  return join([
    latin(header("MEMBER ", memberNumbers)),
    latin(header("DSCRPTR", "0".repeat(30))),
    latin(namesRecord(member, "SASDATA")),
    latin(stamps),
    latin(header("NAMESTR", `000000${String(columns.length).padStart(4, "0")}`.padEnd(30, "0"))),
    padded(namestrs),
    latin(header("OBS    ", "0".repeat(30))),
    padded(cells),
  ]);
}

function header(kind: string, numbers: string): string {
  return `HEADER RECORD*******${kind.padEnd(7)} HEADER RECORD!!!!!!!${numbers}`.padEnd(80);
}

function namesRecord(second: string, third = "9.1"): string {
  return ["SAS", second, third, third === "9.1" ? "XP_PRO" : "9.1"]
    .map((name) => name.padEnd(8))
    .join("")
    .padEnd(80);
}

function padded(bytes: Uint8Array): Uint8Array {
  const whole = new Uint8Array(Math.ceil(bytes.length / 80) * 80).fill(0x20);
  whole.set(bytes);
  return whole;
}

function join(parts: readonly Uint8Array[]): Uint8Array {
  return Uint8Array.from(parts.flatMap((part) => [...part]));
}

function numericCell(cell: number | string): Uint8Array {
  return typeof cell === "number"
    ? toIbmDouble(cell)
    : Uint8Array.from([cell.charCodeAt(0), 0, 0, 0, 0, 0, 0, 0]);
}

/** The IBM double of a number, all 8 bytes: sign, exponent of 16 in excess 64, fraction in [1/16, 1). */
export function toIbmDouble(value: number): Uint8Array {
  const bytes = new Uint8Array(8);
  if (value === 0) return bytes;
  let exponent = 64;
  let fraction = Math.abs(value);
  for (; fraction >= 1; fraction /= 16) exponent++;
  for (; fraction < 1 / 16; fraction *= 16) exponent--;
  bytes[0] = (value < 0 ? 0x80 : 0) | exponent;
  for (let i = 1; i < 8; i++) {
    fraction *= 256;
    bytes[i] = Math.floor(fraction);
    fraction -= Math.floor(fraction);
  }
  return bytes;
}
