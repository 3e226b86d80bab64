import { err, ok, type Result } from "@steelyard/core/result";
import { ibmDouble } from "./ibm-double.ts";

/** A SAS transport (XPORT version 5) data set: its variables by name, each a column as long as `rows`. */
export interface TransportFile {
  readonly member: string;
  readonly rows: number;
  readonly columns: ReadonlyMap<string, readonly (number | string | undefined)[]>;
}

export type TransportIssue =
  | { readonly type: "not-a-transport-file"; readonly found: string }
  | { readonly type: "version-not-supported"; readonly found: string }
  | { readonly type: "truncated"; readonly at: number };

const record = 80;
/** Begins every data set; after the rows of one, the next. */
const memberOpening = "HEADER RECORD*******MEMBER  HEADER RECORD!!!!!!!";
const ascii = new TextDecoder("latin1");

interface Variable {
  readonly name: string;
  readonly numeric: boolean;
  readonly length: number;
  readonly position: number;
}

/**
 * Reads the first data set of a SAS transport file.
 *
 * Rows of nothing but blanks at the end are the padding of the last 80-byte record and are dropped.
 *
 * @source sas-ts140
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { buildTransport, readTransport } from "@steelyard/study/transport";
 *
 * const set = { member: "WARD", columns: [{ name: "BMXWT", length: 8 }], rows: [[12.3], ["."]] } as const;
 * const file = readTransport(buildTransport([set]));
 * assert.ok(file.ok);
 * assert.deepEqual(file.value.columns.get("BMXWT"), [12.3, undefined]);
 * ```
 */
export function readTransport(bytes: Uint8Array): Result<TransportFile, TransportIssue> {
  const text = (from: number, length: number): string => ascii.decode(bytes.subarray(from, from + length));
  const opening = text(0, 48);
  if (opening.startsWith("HEADER RECORD*******LIBV8"))
    return err({ type: "version-not-supported", found: "version 8" });
  if (!opening.startsWith("HEADER RECORD*******LIBRARY HEADER RECORD!!!!!!!")) {
    return err({ type: "not-a-transport-file", found: printable(opening) });
  }
  // Every record is padded to 80 bytes, so a download that broke off nearly always shows.
  if (bytes.length % record !== 0) return err({ type: "truncated", at: bytes.length });
  const memberHeader = 3 * record;
  const namestrLength = Number(text(memberHeader + 74, 4));
  const member = text(memberHeader + 2 * record + 8, 8).trim();
  const namestrHeader = memberHeader + 4 * record;
  const count = Number(text(namestrHeader + 54, 4));
  if (!text(namestrHeader, record).includes("NAMESTR HEADER") || !(count > 0) || !(namestrLength > 0)) {
    return err({ type: "truncated", at: namestrHeader });
  }
  const namestrStart = namestrHeader + record;
  const observationHeader = namestrStart + Math.ceil((count * namestrLength) / record) * record;
  if (!text(observationHeader, record).includes("OBS     HEADER"))
    return err({ type: "truncated", at: observationHeader });
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const variables = Array.from({ length: count }, (_, i): Variable => {
    const at = namestrStart + i * namestrLength;
    return {
      numeric: view.getInt16(at) === 1,
      length: view.getInt16(at + 4),
      name: text(at + 8, 8).trim(),
      position: view.getInt32(at + 84),
    };
  });
  const width = variables.reduce((sum, variable) => sum + variable.length, 0);
  const start = observationHeader + record;
  let end = start;
  while (end < bytes.length && text(end, memberOpening.length) !== memberOpening) end += record;
  let rows = Math.floor((end - start) / width);
  const blank = (row: number): boolean =>
    bytes.subarray(start + row * width, start + (row + 1) * width).every((byte) => byte === 0x20);
  while (rows > 0 && blank(rows - 1)) rows--;
  const columns = new Map<string, (number | string | undefined)[]>();
  for (const variable of variables) {
    columns.set(
      variable.name,
      Array.from({ length: rows }, (_, row) => {
        const from = start + row * width + variable.position;
        if (variable.numeric) return ibmDouble(bytes.subarray(from, from + variable.length));
        return text(from, variable.length).trimEnd();
      }),
    );
  }
  return ok({ member, rows, columns });
}

function printable(found: string): string {
  return found.replace(/[^\x20-\x7e]/g, ".").slice(0, 24);
}
