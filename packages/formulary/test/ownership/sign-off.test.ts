import { createHash } from "node:crypto";
import type { Formulary } from "@steelyard/core/dosing";
import { draftFormulary, validateFormulary } from "@steelyard/formulary";
import { canonicalJson, signFormulary, verifySignOff, writeFormulary } from "@steelyard/formulary/ownership";
import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";

const sha256 = (text: string): string => createHash("sha256").update(text).digest("hex");
const by = { name: "A. Example", role: "pharmacist", date: "2026-11-25" };

let signed: Formulary;
beforeAll(async () => {
  signed = await signFormulary({ formulary: draftFormulary, ...by, sha256 });
});

describe("canonicalJson()", () => {
  // Sorted members, numbers and strings as in the examples of RFC 8785, section 3.2.
  it("writes what the standard for canonical JSON gives", () => {
    const value = JSON.parse(
      '{"numbers":[333333333.33333329,1E30,4.50,2e-3,0.000000000000000000000000001],"literals":[null,true,false]}',
    );
    expect(canonicalJson(value)).toBe(
      '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27]}',
    );
  });

  it("does not depend on the order of fields, and holds all of the data", () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        expect(JSON.parse(canonicalJson(value))).toEqual(JSON.parse(JSON.stringify(value)));
      }),
      { seed: 20261125 },
    );
    expect(canonicalJson({ a: 1, b: 2 })).toBe(canonicalJson({ b: 2, a: 1 }));
  });

  it("refuses what JSON cannot hold", () => {
    expect(() => canonicalJson({ amount: Number.NaN })).toThrow(TypeError);
    expect(() => canonicalJson([undefined])).toThrow(TypeError);
  });
});

describe("signFormulary()", () => {
  it("makes a formulary that is valid, signed, and says by whom", async () => {
    expect(validateFormulary(signed).ok).toBe(true);
    expect(signed).toMatchObject({ signed: true, signOff: by });
    expect(await verifySignOff({ formulary: signed, sha256 })).toEqual({ ok: true, value: signed.signOff });
  });

  it("holds after the file was written and read, and takes a digest that takes its time", async () => {
    const read = JSON.parse(writeFormulary(signed)) as Formulary;
    const slow = async (text: string): Promise<string> => sha256(text);
    expect((await verifySignOff({ formulary: read, sha256: slow })).ok).toBe(true);
  });

  it("gives SHA-256 over the text without the fingerprint", () => {
    const { fingerprint, ...rest } = signed.signOff ?? { fingerprint: "" };
    expect(fingerprint).toBe(sha256(canonicalJson({ ...signed, signOff: rest })));
  });

  it.each([
    { name: " " },
    { role: "" },
    { date: "25.11.2026" },
    { date: "2026-02-29" },
    { date: "2026-13-01" },
  ])("refuses $name$role$date", async (wrong) => {
    await expect(signFormulary({ formulary: draftFormulary, ...by, ...wrong, sha256 })).rejects.toThrow(
      /Cannot sign/,
    );
  });
});

describe("verifySignOff()", () => {
  it("does not take a claim for a signature", async () => {
    const claims = [
      { ...draftFormulary, signed: true },
      { ...signed, signed: false },
    ] as const;
    for (const formulary of claims) {
      expect(await verifySignOff({ formulary, sha256 })).toEqual({
        ok: false,
        error: { type: "not-signed" },
      });
    }
  });

  it("breaks on any byte of the file", async () => {
    const text = writeFormulary(signed);
    const edit = fc.record({ at: fc.nat(text.length - 1), byte: fc.integer({ min: 32, max: 126 }) });
    await fc.assert(
      fc.asyncProperty(edit, async ({ at, byte }) => {
        const edited = text.slice(0, at) + String.fromCharCode(byte) + text.slice(at + 1);
        if (edited === text) return;
        let formulary: Formulary;
        try {
          formulary = JSON.parse(edited) as Formulary;
        } catch {
          return;
        }
        // A file is signed as it was written: either its layout or its fingerprint gives the edit away.
        const isAsWritten = writeFormulary(formulary) === edited;
        const verified = await verifySignOff({ formulary, sha256 });
        expect(isAsWritten && verified.ok).toBe(false);
      }),
      { seed: 20261125, numRuns: 150 },
    );
  });

  it("breaks on any value, name and role among them", async () => {
    const signOff = signed.signOff;
    if (signOff === undefined) throw new Error("not signed");
    const edits: Formulary[] = [
      { ...signed, version: "draft 0.2" },
      { ...signed, deviceEnergiesJ: signed.deviceEnergiesJ.slice(1) },
      { ...signed, medicines: signed.medicines.toReversed() },
      { ...signed, signOff: { ...signOff, name: "B. Example" } },
      { ...signed, signOff: { ...signOff, role: "physician" } },
      { ...signed, signOff: { ...signOff, date: "2026-11-26" } },
      { ...signed, signOff: { ...signOff, fingerprint: signOff.fingerprint.replace(/^./, "x") } },
    ];
    for (const formulary of edits) {
      const result = await verifySignOff({ formulary, sha256 });
      expect(result.ok || result.error.type).toBe("changed-since");
    }
  });
});
