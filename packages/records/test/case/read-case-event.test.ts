import { readFileSync } from "node:fs";
import { caseCode, readCaseEvent, readCaseFile, writeCaseFile } from "@steelyard/records/case";
import { Ajv } from "ajv";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import schema from "../../schemas/case-event.schema.json" with { type: "json" };
import { generatedFiles } from "../generate/generated-files.ts";
import { anyEvents, sampleCase, uuid } from "./sample-events.ts";

const [start, measurement, estimate] = sampleCase;
const judge = new Ajv({ strict: false }).compile(schema);

describe("readCaseEvent()", () => {
  test.each(sampleCase.map((event) => [event.type, event] as const))(
    "reads %s, as the JSON Schema does",
    (_, event) => {
      expect(readCaseEvent(JSON.parse(JSON.stringify(event)))).toEqual({ ok: true, value: event });
      expect(judge(event), JSON.stringify(judge.errors)).toBe(true);
    },
  );

  test.each([
    ["no object", 7, { type: "not-an-object" }],
    ["a list", [], { type: "not-an-object" }],
    ["a later format", { ...start, format: 2 }, { type: "unknown-format", format: 2 }],
    ["an unknown kind", { ...start, type: "moved" }, { type: "unknown-event", event: "moved" }],
    [
      "an id that is none",
      { ...start, id: "1" },
      { type: "faulty-part", path: "id", reason: "must be a UUID in lower case" },
    ],
    [
      "a day that does not exist",
      { ...start, at: "2026-02-30T00:00:00.000Z" },
      { type: "faulty-part", path: "at", reason: "must be a day and time that exist" },
    ],
    [
      "a name in a case code",
      { ...start, code: "Ada Lovelace" },
      { type: "faulty-part", path: "code", reason: "must be a code such as K47-2TP" },
    ],
    [
      "a length of 12 m",
      { ...measurement, measurements: { lengthCm: 1200 } },
      { type: "faulty-part", path: "measurements.lengthCm", reason: "must be at most 250" },
    ],
    [
      "a range beside its total",
      { ...estimate, estimate: { totalKg: 30, low95Kg: 10, high95Kg: 20, rests: [] } },
      { type: "faulty-part", path: "estimate", reason: "must have its total within its range" },
    ],
  ])("names the fault of %s", (_, value, fault) => {
    expect(readCaseEvent(value)).toEqual({ ok: false, error: [fault] });
  });

  test("refuses a word too much, so that no name slips in", () => {
    const read = readCaseEvent({ ...start, patientName: "x" });
    expect(read).toMatchObject({ ok: false, error: [{ type: "faulty-part", path: "patientName" }] });
    expect(judge({ ...start, patientName: "x" })).toBe(false);
  });

  test("never throws, whatever it is given", () => {
    fc.assert(
      fc.property(fc.anything(), fc.constantFrom(...sampleCase), fc.string(), (value, event, key) => {
        readCaseEvent(value);
        readCaseEvent({ ...event, [key]: value });
      }),
      { seed: 20261125, numRuns: 1000 },
    );
  });
});

test.each(Object.entries(generatedFiles))(
  "%s is up to date (npm run generate -w packages/records)",
  (path, wanted) => {
    const written = readFileSync(new URL(`../../${path}`, import.meta.url), "utf8");
    expect(JSON.parse(written)).toEqual(JSON.parse(wanted));
  },
);

describe("a case file", () => {
  test("brings every event back, in order, once", () => {
    fc.assert(
      fc.property(anyEvents, (events) => {
        const read = readCaseFile(writeCaseFile([...events, ...events]));
        if (!read.ok) throw new Error(read.error.type);
        expect(read.value.refused).toEqual([]);
        expect(read.value.events.toSorted((a, b) => (a.id < b.id ? -1 : 1))).toEqual([...events]);
      }),
      { seed: 20261125, numRuns: 200 },
    );
  });

  test.each([
    ["", { type: "empty" }],
    ["{", { type: "not-json" }],
    ["null", { type: "not-a-case-file" }],
    ['{"format":"other","events":[]}', { type: "not-a-case-file" }],
    ['{"format":"steelyard-cases","version":9,"events":[]}', { type: "later-version", version: 9 }],
  ])("%j is refused with its reason", (text, error) => {
    expect(readCaseFile(text)).toMatchObject({ ok: false, error });
  });

  test("a bad event is told by its place and stops no other", () => {
    const text = writeCaseFile(sampleCase).replace('"K47-2TP"', '"a name"');
    const read = readCaseFile(text);
    expect(read.ok && read.value.events.length).toBe(sampleCase.length - 1);
    expect(read.ok && read.value.refused).toEqual([
      { place: 1, faults: [{ type: "faulty-part", path: "code", reason: "must be a code such as K47-2TP" }] },
    ]);
  });
});

test("caseCode() is made of signs that cannot be misread, for all bytes", () => {
  for (let byte = 0; byte < 256; byte += 1) {
    const code = caseCode(Array(6).fill(byte));
    expect(code).toMatch(/^[2-9A-HJKMNP-TV-Z]{3}-[2-9A-HJKMNP-TV-Z]{3}$/);
    expect(readCaseEvent({ ...start, id: uuid(byte), code }).ok).toBe(true);
  }
  expect(() => caseCode([1])).toThrow(RangeError);
});
