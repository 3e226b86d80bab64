import { err, ok, type Result } from "@steelyard/core/result";
import Papa from "papaparse";
import type { CaseEvent, CaseMeasurements, EventVersions } from "./case-event.ts";
import { eventFormat } from "./case-event.ts";
import { type EventFault, readCaseEvent } from "./read-case-event.ts";
import {
  columns,
  estimateColumns,
  flagColumns,
  numberColumns,
  secondColumns,
  studyColumns,
  wordColumns,
} from "./study-columns.ts";

/** One case of a study file. */
export interface StudyRow {
  readonly code: string;
  readonly measurements: CaseMeasurements;
  readonly estimate?: Readonly<Record<string, unknown>>;
  readonly second?: Readonly<Record<string, number>>;
  readonly weightKg?: number;
  readonly weightDaysAfter?: number;
  readonly versions: EventVersions;
}

export type StudyRowFault =
  | { readonly type: "no-rows" }
  | { readonly type: "missing-column"; readonly column: string }
  /** Nothing is read from it. */
  | { readonly type: "unknown-column"; readonly column: string }
  | { readonly type: "not-a-number"; readonly row: number; readonly column: string; readonly text: string }
  | {
      readonly type: "unequal-fields";
      readonly row: number;
      readonly fields: number;
      readonly expected: number;
    }
  | { readonly type: "open-quote"; readonly row: number }
  | { readonly type: "faulty-value"; readonly row: number; readonly column: string; readonly reason: string };

export interface ReadStudyRows {
  /** Rows without a fault, with their number in the file; the head is row 1. */
  readonly rows: readonly { readonly row: number; readonly study: StudyRow }[];
  readonly faults: readonly StudyRowFault[];
}

/**
 * The cases of a CSV file that `writeStudyRows` wrote, and every fault of it by row and column.
 *
 * A faulty row is left out whole, the others are read. Commas or semicolons part the fields.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { readStudyRows } from "@steelyard/records/case";
 *
 * const { rows, faults } = readStudyRows("child_id,lying_length_cm\r\nK47-2TP,1x6\r\n");
 * assert.equal(rows.length, 0);
 * assert.deepEqual(faults, [{ type: "not-a-number", row: 2, column: "lying_length_cm", text: "1x6" }]);
 * ```
 */
export function readStudyRows(text: string): ReadStudyRows {
  const parsed = Papa.parse<string[]>(text.replace(/^\uFEFF/, ""), {
    skipEmptyLines: "greedy",
    delimitersToGuess: [",", ";", "\t"],
  });
  const [head, ...body] = parsed.data;
  if (head === undefined || body.length === 0) return { rows: [], faults: [{ type: "no-rows" }] };
  const names = head.map((name) => name.trim().toLowerCase());
  const faults: StudyRowFault[] = names
    .filter((name) => !studyColumns.includes(name))
    .map((column) => ({ type: "unknown-column", column }));
  if (!names.includes(columns.code))
    return { rows: [], faults: [...faults, { type: "missing-column", column: columns.code }] };
  const openQuotes = new Set(parsed.errors.filter(({ type }) => type === "Quotes").map(({ row }) => row));
  const rows = body.flatMap((fields, i) => {
    const row = i + 2;
    if (openQuotes.has(i + 1)) {
      faults.push({ type: "open-quote", row });
      return [];
    }
    if (fields.length !== names.length) {
      faults.push({ type: "unequal-fields", row, fields: fields.length, expected: names.length });
      return [];
    }
    const cells = new Map(names.map((name, at) => [name, fields[at]?.trim() ?? ""]));
    const read = readRow(row, cells);
    if (read.ok) return [{ row, study: read.value }];
    faults.push(...read.error);
    return [];
  });
  return { rows, faults };
}

function readRow(
  row: number,
  cells: ReadonlyMap<string, string>,
): Result<StudyRow, readonly StudyRowFault[]> {
  const faults: StudyRowFault[] = [];
  const cell = (column: string): string => cells.get(column) ?? "";
  const number = (column: string): number | undefined => {
    const text = cell(column);
    if (text === "") return undefined;
    const value = Number(text);
    if (!/^-?[\d.]+(e-?\d+)?$/i.test(text) || !Number.isFinite(value)) {
      faults.push({ type: "not-a-number", row, column, text: text.slice(0, 40) });
      return undefined;
    }
    return value;
  };
  const numbers = (names: Readonly<Record<string, string>>): Record<string, number> =>
    Object.fromEntries(
      Object.entries(names).flatMap(([name, column]) => {
        const value = number(column);
        return value === undefined ? [] : [[name, value] as const];
      }),
    );
  const words = (names: Readonly<Record<string, string>>): Record<string, string> =>
    Object.fromEntries(
      Object.entries(names).flatMap(([name, column]) =>
        cell(column) === "" ? [] : [[name, cell(column)] as const],
      ),
    );
  const flags = Object.fromEntries(
    Object.entries(words(flagColumns)).map(([name, word]) => [
      name,
      word === "yes" ? true : word === "no" ? false : word,
    ]),
  );
  const measurements = {
    ...numbers(numberColumns),
    ...words(wordColumns),
    ...flags,
    ...numbers({ scaleKg: columns.scaleAtOnceKg }),
  } as CaseMeasurements;
  const estimated = numbers(estimateColumns);
  const second = numbers(secondColumns);
  const [weightKg, weightDaysAfter] = [number(columns.weightKg), number(columns.weightDaysAfter)];
  const versions: EventVersions = {
    software: cell(columns.software) || "not stated",
    model: cell(columns.model) || "not stated",
    formulary: cell(columns.formulary) || "not stated",
    formularySigned: cell(columns.formularySigned) === "yes",
    ...(cell(columns.calibration) !== "" && { calibration: cell(columns.calibration) }),
  };
  const study: StudyRow = {
    code: cell(columns.code),
    measurements,
    ...(Object.keys(estimated).length > 0 && {
      estimate: {
        ...estimated,
        rests: cell(columns.rests)
          .split(" ")
          .filter((word) => word !== ""),
      },
    }),
    ...(Object.keys(second).length > 0 && { second }),
    ...(weightKg !== undefined && { weightKg }),
    ...(weightDaysAfter !== undefined && { weightDaysAfter }),
    versions,
  };
  if (faults.length === 0) faults.push(...faultsOf(row, study));
  return faults.length > 0 ? err(faults) : ok(study);
}

const noId = "00000000-0000-4000-8000-000000000000";

/** What the schema of events says of the row, in the names of its columns. */
function faultsOf(row: number, study: StudyRow): readonly StudyRowFault[] {
  const events = looseEvents(study, {
    at: "2000-01-01T00:00:00.000Z",
    caseId: noId,
    ids: Array(5).fill(noId),
  });
  return events.flatMap((event) => {
    const read = readCaseEvent(event);
    return read.ok ? [] : read.error.map((fault) => faultOf(row, event.type, fault));
  });
}

const columnByPath: ReadonlyMap<string, string> = new Map<string, string>([
  ...Object.entries({ ...numberColumns, ...wordColumns, ...flagColumns }).map(
    ([name, column]) => [`measurement.measurements.${name}`, column] as const,
  ),
  ["measurement.measurements.scaleKg", columns.scaleAtOnceKg],
  ...Object.entries(estimateColumns).map(([name, column]) => [`estimate.estimate.${name}`, column] as const),
  ...Object.entries(secondColumns).map(([name, column]) => [`second-reading.${name}`, column] as const),
  ["case-started.code", columns.code],
  ["later-weight.kg", columns.weightKg],
  ["later-weight.on", columns.weightDaysAfter],
]);

function faultOf(row: number, type: unknown, fault: EventFault): StudyRowFault {
  const path = fault.type === "faulty-part" ? fault.path : "";
  const reason = fault.type === "faulty-part" ? fault.reason : fault.type;
  const column =
    columnByPath.get(`${String(type)}.${path}`) ?? (type === "estimate" ? estimateColumns.totalKg : path);
  return { type: "faulty-value", row, column, reason };
}

interface NewIds {
  /** When the case is taken to have begun, as the file has no dates. */
  readonly at: string;
  readonly caseId: string;
  /** Five UUIDs, used in order. */
  readonly ids: readonly string[];
}

/**
 * The events of a case that came in a study file. The file has no dates, so the case begins at `at` and the scale
 * weight lies as many days after it as the file says.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { foldCase, readStudyRows, studyEvents } from "@steelyard/records/case";
 *
 * const [first] = readStudyRows("child_id,lying_length_cm,weight_kg,weight_days_after\r\nK47-2TP,92.5,13.1,2").rows;
 * const ids = [1, 2, 3, 4, 5].map((n) => `00000000-0000-4000-8000-00000000000${n}`);
 * assert.ok(first);
 * const record = foldCase(studyEvents(first.study, { at: "2026-11-25T03:12:00.000Z", caseId: ids[0] ?? "", ids }));
 * assert.equal(record.laterWeight?.on, "2026-11-27");
 * ```
 */
export function studyEvents(study: StudyRow, ids: NewIds): readonly CaseEvent[] {
  return looseEvents(study, ids) as readonly unknown[] as readonly CaseEvent[];
}

function looseEvents(
  { code, measurements, estimate, second, weightKg, weightDaysAfter, versions }: StudyRow,
  { at, caseId, ids }: NewIds,
): readonly Readonly<Record<string, unknown>>[] {
  const bodies: Readonly<Record<string, unknown>>[] = [
    { type: "case-started", code },
    { type: "measurement", measurements },
    ...(estimate ? [{ type: "estimate", estimate }] : []),
    ...(second ? [{ type: "second-reading", ...second }] : []),
    // A scale weight of the same moment is a measurement already.
    ...(weightKg === undefined || weightKg === measurements.scaleKg
      ? []
      : [{ type: "later-weight", kg: weightKg, on: dayAfter(at, weightDaysAfter ?? 0) }]),
  ];
  return bodies.map((body, i) => ({ format: eventFormat, id: ids[i], caseId, at, versions, ...body }));
}

function dayAfter(at: string, days: number): string {
  const date = new Date(Date.parse(at.slice(0, 10)) + days * 24 * 60 * 60 * 1000);
  return Number.isNaN(date.getTime()) ? "" : date.toISOString().slice(0, 10);
}
