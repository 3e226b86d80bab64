import { err, ok, type Result } from "@steelyard/core/result";
import type { ImportIssue } from "./import-issue.ts";

/** The last row and column that a sheet of a workbook can have. */
const LAST_ROW = 1_048_576;
const LAST_COLUMN = 16_384;
/** A reader fills the gaps between cells. So many are filled without asking; more only in a sheet that is mostly full. */
const ALWAYS_CELLS = 2_000_000;
const GAPS_FOR_A_CELL = 50;
/** A full sheet of sixty columns. */
const MOST_CELLS = 64_000_000;

const [LESS_THAN, QUOTE, SPACE] = [0x3c, 0x22, 0x20];
const [LETTER_C, LETTER_R] = [0x63, 0x72];

/**
 * Whether the cells of a sheet lie close enough together to be read: one cell at the far corner makes a table of 17 thousand million,
 * out of a file of a thousand bytes. Every address must be a plain one, as `AB12`.
 */
export function checkSheetSpan(xml: Uint8Array): Result<undefined, ImportIssue> {
  const decoder = new TextDecoder("latin1");
  let [rows, columns, cells] = [0, 0, 0];
  let farthest = "";
  for (let at = xml.indexOf(LESS_THAN); at >= 0; at = xml.indexOf(LESS_THAN, at + 1)) {
    const kind = kindOf(xml, at + 1);
    if (kind === undefined) continue;
    if (kind === "c") cells += 1;
    const found = plainAddress(xml, at) ?? addressesIn(decoder.decode(xml.subarray(at, endOfTag(xml, at))));
    if (found === "faulty") {
      return err({ type: "workbook-damaged", detail: `an address of a ${kind === "c" ? "cell" : "row"}` });
    }
    if (found === undefined) continue;
    if (found.row > LAST_ROW || found.column > LAST_COLUMN) {
      return err({ type: "workbook-damaged", detail: "a cell outside of every sheet" });
    }
    if (found.row > rows || found.column > columns) {
      farthest = `column ${Math.max(columns, found.column)} of row ${Math.max(rows, found.row)}`;
    }
    rows = Math.max(rows, found.row);
    columns = Math.max(columns, found.column);
  }
  const filled = rows * columns;
  const most = Math.min(MOST_CELLS, Math.max(ALWAYS_CELLS, GAPS_FOR_A_CELL * cells));
  return filled > most ? err({ type: "sheet-scattered", cells, farthest }) : ok(undefined);
}

interface Address {
  readonly row: number;
  /** 0 where only a row is named. */
  readonly column: number;
}

/** `c` or `row`, with or without a prefix of a namespace. */
function kindOf(xml: Uint8Array, from: number): "c" | "row" | undefined {
  let start = from;
  let end = from;
  for (; end < xml.length && end < from + 64; end++) {
    const byte = xml[end] as number;
    if (byte === 0x3a) start = end + 1;
    else if (byte <= SPACE || byte === 0x3e || byte === 0x2f) break;
  }
  if (end - start === 1 && xml[start] === LETTER_C) return "c";
  const isRow =
    end - start === 3 && xml[start] === LETTER_R && xml[start + 1] === 0x6f && xml[start + 2] === 0x77;
  return isRow ? "row" : undefined;
}

/** The address where the tag is written as every program writes it: `<c r="AB12"`. */
function plainAddress(xml: Uint8Array, at: number): Address | undefined {
  const opens = [LETTER_C, SPACE, LETTER_R, 0x3d, QUOTE].every((byte, i) => xml[at + 1 + i] === byte);
  if (!opens) return undefined;
  let [i, column, row] = [at + 6, 0, 0];
  for (; isBetween(xml[i], 0x41, 0x5a) && column <= LAST_COLUMN; i++)
    column = column * 26 + (xml[i] as number) - 0x40;
  const digits = i;
  for (; isBetween(xml[i], 0x30, 0x39) && row <= LAST_ROW; i++) row = row * 10 + (xml[i] as number) - 0x30;
  return column > 0 && i > digits && xml[i] === QUOTE ? { row, column } : undefined;
}

function isBetween(byte: number | undefined, low: number, high: number): boolean {
  return byte !== undefined && byte >= low && byte <= high;
}

/** What any other way of writing the tag says; a way that another reader could take for something else is a fault. */
function addressesIn(tag: string): Address | "faulty" | undefined {
  let address: Address | undefined;
  for (const [, double, single] of tag.matchAll(/\sr\s*=\s*(?:"([^"]*)"|'([^']*)')/g)) {
    const [, letters, digits] = /^([A-Z]{0,3})(\d{1,7})$/.exec(double ?? single ?? "") ?? [];
    if (address !== undefined || letters === undefined) return "faulty";
    let column = 0;
    for (const letter of letters) column = column * 26 + letter.charCodeAt(0) - 64;
    address = { row: Number(digits), column };
  }
  return address;
}

/** Past its `>`; one inside of quotation marks ends nothing. */
function endOfTag(xml: Uint8Array, at: number): number {
  let quote = 0;
  for (let i = at; i < xml.length; i++) {
    const byte = xml[i] as number;
    if (quote !== 0) quote = byte === quote ? 0 : quote;
    else if (byte === QUOTE || byte === 0x27) quote = byte;
    else if (byte === 0x3e) return i + 1;
  }
  return xml.length;
}
