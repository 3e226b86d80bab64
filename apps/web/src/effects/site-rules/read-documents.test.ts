import { createHash } from "node:crypto";
import { calibrateSite, estimateWeight, writeSiteProfile } from "@steelyard/core/body";
import { centimetres } from "@steelyard/core/units";
import { draftFormulary } from "@steelyard/formulary";
import { signFormulary, writeFormulary } from "@steelyard/formulary/ownership";
import type { DocumentInForce } from "@steelyard/records/sync";
import { describe, expect, test } from "vitest";
import { readDocuments } from "./read-documents.ts";

const hash = (text: string): string => createHash("sha256").update(text).digest("hex");
const sha256 = async (text: string): Promise<string> => hash(text);
const document = (content: string): DocumentInForce => ({ sha256: hash(content), content, signatures: [] });
const formulary = { ...draftFormulary, medicines: draftFormulary.medicines.slice(0, 1) };
const text = JSON.stringify(formulary.medicines);
const small = {
  ...formulary,
  version: "ward 1",
  sources: draftFormulary.sources.filter(({ id }) => text.includes(`"sourceId":"${id}"`)),
};
const by = { name: "A. Example", role: "pharmacist", date: "2026-11-25" };
const second = { name: "B. Sample", role: "physician", date: "2026-11-25" };
const signed = await signFormulary({ formulary: small, ...by, second, sha256 });

function profile(isSigned: boolean): string {
  const rows = Array.from({ length: 30 }, (_, i) => {
    const measurements = { lengthCm: centimetres(70 + 3 * i) };
    const estimate = estimateWeight(measurements);
    if (!estimate.ok) throw new RangeError("The model serves these lengths");
    return { measurements, weightKg: estimate.value.totalKg * 1.05 };
  });
  const calibration = calibrateSite(rows);
  if (!calibration.ok) throw new RangeError("30 children are enough");
  const identity = {
    name: "Larch ward",
    createdOn: "2026-11-25",
    rowsSha256: "0".repeat(64),
    signed: isSigned,
  };
  return JSON.stringify(writeSiteProfile(calibration.value, { identity, leftOut: [], software: "0.1.0" }));
}

describe("readDocuments()", () => {
  test("gives what verifies, with the names of who signed", async () => {
    const answer = { protocol: 1, formulary: document(writeFormulary(signed)) } as const;
    const read = await readDocuments({ ...answer, calibration: document(profile(true)) }, sha256);
    expect(read.refused).toEqual([]);
    expect(read.site?.identity.name).toBe("Larch ward");
    expect(read.formulary).toMatchObject({
      version: "ward 1",
      fingerprint: signed.signOff?.fingerprint,
      signers: [by, second],
      from: "department",
      document: answer.formulary.sha256,
    });
    expect(JSON.parse(read.formulary?.text ?? "")).toEqual(signed);
  });

  test("says nothing of what is not answered, and none of what is in force no more", async () => {
    expect(await readDocuments({ protocol: 1 }, sha256)).toEqual({ refused: [] });
    expect(await readDocuments({ protocol: 1, formulary: null, calibration: null }, sha256)).toEqual({
      formulary: null,
      site: null,
      refused: [],
    });
  });

  test.each([
    ["changed-on-the-way", { ...document(writeFormulary(signed)), content: writeFormulary(small) }],
    ["edited-since-signed", document(writeFormulary({ ...signed, title: "Another" }))],
    ["not-signed", document(writeFormulary(small))],
    ["not-signed", document(writeFormulary({ ...small, signed: true }))],
    ["faulty", document("{")],
    ["faulty", document(`${"[".repeat(100_000)}`)],
    ["faulty", document(writeFormulary({ ...signed, medicines: [] as never, version: "" }))],
  ])("refuses a formulary as %s", async (why, given) => {
    expect(await readDocuments({ protocol: 1, formulary: given }, sha256)).toEqual({
      refused: [{ kind: "formulary", why }],
    });
  });

  test.each([
    ["changed-on-the-way", { ...document(profile(true)), content: profile(false) }],
    ["not-signed", document(profile(false))],
    ["faulty", document("[]")],
  ])("refuses a calibration as %s, and takes the formulary beside it", async (why, calibration) => {
    const both = { protocol: 1, formulary: document(writeFormulary(signed)), calibration } as const;
    const read = await readDocuments(both, sha256);
    expect(read.refused).toEqual([{ kind: "calibration", why }]);
    expect([read.formulary?.version, read.site]).toEqual(["ward 1", undefined]);
  });
});
