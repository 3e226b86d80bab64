import { text as textOf } from "node:stream/consumers";
import type { DoseUnit, GivenRecord } from "@steelyard/core/dosing";
import { CsvError, parse } from "csv-parse/sync";
import { CommandFailure, EXIT } from "../exit-status.ts";
import { faultyFile, loadText } from "../formulary/load-formulary.ts";

/** How the times of a file are written: as time of day, or as minutes. */
export type Clock = "time-of-day" | "minutes";

export interface GivenFile {
  readonly given: readonly GivenRecord[];
  readonly clock: Clock;
}

const UNIT_BY_NAME: ReadonlyMap<string, DoseUnit> = new Map([
  ["g", "g"],
  ["mg", "mg"],
  ["microgram", "microgram"],
  ["micrograms", "microgram"],
  ["nanogram", "nanogram"],
  ["nanograms", "nanogram"],
  ["mmol", "mmol"],
  ["unit", "unit"],
  ["units", "unit"],
  ["mL", "mL"],
  ["ml", "mL"],
  ["puff", "puff"],
  ["puffs", "puff"],
  ["J", "J"],
]);

const COLUMNS = ["line", "amount", "unit", "at"] as const;
type Row = Readonly<Record<(typeof COLUMNS)[number], string>>;

interface Fault {
  readonly place: string;
  readonly message: string;
}

/** The doses of a file, or every fault with its place: one that cannot be read leaves a total too low, so none is taken. */
export async function readGiven(path: string): Promise<GivenFile> {
  const text = path === "-" ? await textOf(process.stdin) : await loadText(path);
  const rows = /^\s*[[{]/.test(text) ? rowsOfJson(path, text) : rowsOfTable(path, text);
  const faults: Fault[] = [];
  const given: GivenRecord[] = [];
  const clocks = new Set<Clock>();
  for (const [index, row] of rows.entries()) {
    const refuse = (column: string, message: string): void => {
      faults.push({ place: `dose ${index + 1}, ${column}`, message });
    };
    const amount = /^\d+([.,]\d+)?$/.test(row.amount) ? Number(row.amount.replace(",", ".")) : Number.NaN;
    const unit = UNIT_BY_NAME.get(row.unit);
    const at = minutesOf(row.at);
    if (!/^[^.\s]+\.[^.\s]+$/.test(row.line)) {
      refuse("line", `must be the id of a line, such as adrenaline.arrest: it is "${row.line}"`);
    }
    if (!(amount > 0 && amount < 1e9)) refuse("amount", `must be a number above 0: it is "${row.amount}"`);
    if (unit === undefined) {
      const known = [...new Set(UNIT_BY_NAME.values())].join(", ");
      refuse("unit", `must be one of ${known}, "micrograms" and "units" in full: it is "${row.unit}"`);
    }
    if (at === undefined) refuse("at", `must be a time of day (14:05) or minutes: it is "${row.at}"`);
    else clocks.add(at.clock);
    if (unit !== undefined && at !== undefined) {
      given.push({ lineId: row.line, dose: { amount, unit }, atMinutes: at.minutes });
    }
  }
  if (clocks.size > 1) faults.push({ place: "at", message: "has times of day and minutes: use one of them" });
  if (rows.length === 0) faults.push({ place: "line 1", message: "has no dose" });
  if (faults.length > 0) throw faultyFile(path, faults);
  return { given, clock: clocks.has("time-of-day") ? "time-of-day" : "minutes" };
}

function minutesOf(text: string): { readonly minutes: number; readonly clock: Clock } | undefined {
  const time = /^([01]?\d|2[0-3]):([0-5]\d)$/.exec(text);
  if (time) return { minutes: 60 * Number(time[1]) + Number(time[2]), clock: "time-of-day" };
  if (!/^-?\d+([.,]\d+)?$/.test(text)) return undefined;
  return { minutes: Number(text.replace(",", ".")), clock: "minutes" };
}

function rowsOfTable(path: string, text: string): Row[] {
  const [header = ""] = text.split("\n", 1);
  const delimiter = [";", "\t"].find((character) => header.includes(character)) ?? ",";
  try {
    const rows: Record<string, string>[] = parse(text, {
      bom: true,
      delimiter,
      trim: true,
      skip_empty_lines: true,
      columns: (names: string[]) => {
        const columns = names.map((name) => name.trim().toLowerCase());
        const missing = COLUMNS.filter((name) => !columns.includes(name));
        const twice = columns.filter((name, index) => columns.indexOf(name) !== index);
        if (missing.length + twice.length > 0) {
          throw faultyFile(path, [
            ...missing.map((name) => ({ place: "line 1", message: `column ${name} is missing` })),
            ...twice.map((name) => ({ place: "line 1", message: `column ${name} is there twice` })),
          ]);
        }
        return columns;
      },
    });
    return rows.map(({ line = "", amount = "", unit = "", at = "" }) => ({ line, amount, unit, at }));
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    throw new CommandFailure(EXIT.notServed, `${path} is no table: ${error.message}. Nothing was taken.`);
  }
}

function rowsOfJson(path: string, text: string): Row[] {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    const what = error instanceof Error ? error.message : String(error);
    throw faultyFile(path, [{ place: "file", message: `is not JSON: ${what}` }]);
  }
  if (!Array.isArray(value)) throw faultyFile(path, [{ place: "file", message: "must be a list of doses" }]);
  return value.map((entry: unknown) => {
    const { lineId, dose, atMinutes } = fieldsOf(entry);
    const { amount, unit } = fieldsOf(dose);
    return { line: written(lineId), amount: written(amount), unit: written(unit), at: written(atMinutes) };
  });
}

function fieldsOf(value: unknown): Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null ? (value as Record<string, unknown>) : {};
}

function written(value: unknown): string {
  return typeof value === "string" || typeof value === "number" ? String(value) : "";
}
