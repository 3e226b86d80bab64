/** One thing that is wrong with a file, and where: `population.variance.shift`. */
export interface FieldFault {
  readonly place: string;
  readonly problem:
    | { readonly type: "missing" }
    | { readonly type: "not-an-object" | "not-a-list" | "not-a-text" | "not-a-date" | "not-true-or-false" }
    | { readonly type: "not-a-sha256" }
    | { readonly type: "not-a-number" }
    | { readonly type: "not-a-whole-number" }
    | {
        readonly type: "out-of-range";
        readonly value: number;
        readonly low: number;
        readonly high: number;
      }
    | { readonly type: "unexpected"; readonly value: string; readonly expected: string };
}

/** Both ends allowed. */
export type Range = readonly [low: number, high: number];

/** Reads the fields of one object of unknown shape; what is wrong is put on a list, and a stand-in returned. */
export interface FieldReader {
  number(name: string, range: Range): number;
  whole(name: string, range: Range): number;
  text(name: string, longest?: number): string;
  date(name: string): string;
  sha256(name: string): string;
  flag(name: string): boolean;
  /** The text must be this one; gives whether it is. */
  exactly(name: string, expected: string | number): boolean;
  object(name: string): FieldReader;
  list(name: string): readonly FieldReader[];
  has(name: string): boolean;
}

/** A reader of `value`, which stands at `place` in the file, that puts every fault on `faults`. */
export function readFields(given: { value: unknown; place: string; faults: FieldFault[] }): FieldReader {
  const { value, place, faults } = given;
  const isObject = typeof value === "object" && value !== null && !Array.isArray(value);
  const fields = (isObject ? value : {}) as Readonly<Record<string, unknown>>;
  if (!isObject) faults.push({ place, problem: { type: "not-an-object" } });
  const at = (name: string): string => (place === "" ? name : `${place}.${name}`);
  const fault = (name: string, problem: FieldFault["problem"]): void => {
    // Of an object that is none, one fault says all.
    if (isObject) faults.push({ place: at(name), problem });
  };
  /** The field, or undefined with a fault when it is not there or `holds` not. */
  const take = <T>(
    name: string,
    holds: (own: unknown) => own is T,
    type: "not-a-number" | "not-a-text" | "not-a-list" | "not-true-or-false",
  ): T | undefined => {
    const own = Object.hasOwn(fields, name) ? fields[name] : undefined;
    if (own === undefined) fault(name, { type: "missing" });
    else if (holds(own)) return own;
    else fault(name, { type });
    return undefined;
  };
  const reader: FieldReader = {
    number(name, [low, high]) {
      const own = take(name, isNumber, "not-a-number");
      if (own === undefined) return low;
      if (own < low || own > high) fault(name, { type: "out-of-range", value: own, low, high });
      return own;
    },
    whole(name, range) {
      const own = reader.number(name, range);
      if (!Number.isInteger(own)) fault(name, { type: "not-a-whole-number" });
      return own;
    },
    text(name, longest = 200) {
      const own = take(name, isText, "not-a-text") ?? "";
      if (own.length > longest) fault(name, { type: "not-a-text" });
      return own;
    },
    date(name) {
      const own = take(name, isText, "not-a-text") ?? "";
      if (own !== "" && !dates.test(own)) fault(name, { type: "not-a-date" });
      return own;
    },
    sha256(name) {
      const own = take(name, isText, "not-a-text") ?? "";
      if (own !== "" && !/^[0-9a-f]{64}$/.test(own)) fault(name, { type: "not-a-sha256" });
      return own;
    },
    flag(name) {
      return take(name, isFlag, "not-true-or-false") ?? false;
    },
    exactly(name, expected) {
      const own = Object.hasOwn(fields, name) ? fields[name] : undefined;
      if (own === undefined) fault(name, { type: "missing" });
      else if (own !== expected) {
        fault(name, { type: "unexpected", value: String(own).slice(0, 80), expected: String(expected) });
      }
      return own === expected;
    },
    object(name) {
      const own = Object.hasOwn(fields, name) ? fields[name] : undefined;
      if (own !== undefined) return readFields({ value: own, place: at(name), faults });
      fault(name, { type: "missing" });
      return readFields({ value: {}, place: at(name), faults: [] });
    },
    list(name) {
      const own = take(name, Array.isArray, "not-a-list") ?? [];
      return own.map((value: unknown, i: number) =>
        readFields({ value, place: `${at(name)}[${i}]`, faults }),
      );
    },
    has: (name) => Object.hasOwn(fields, name),
  };
  return reader;
}

/** ISO 8601 calendar dates. */
const dates = /^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/;

function isNumber(value: unknown): value is number {
  return Number.isFinite(value);
}

function isText(value: unknown): value is string {
  return typeof value === "string" && value.trim() !== "";
}

function isFlag(value: unknown): value is boolean {
  return typeof value === "boolean";
}
