import { createHash } from "node:crypto";
import type { Formulary, Medicine } from "@steelyard/core/dosing";
import { draftFormulary, validateFormulary } from "@steelyard/formulary";
import {
  listFormulary,
  signaturesNeeded,
  signFormulary,
  verifySignOff,
  withoutSignOff,
} from "@steelyard/formulary/ownership";
import { describe, expect, it } from "vitest";

const sha256 = (text: string): string => createHash("sha256").update(text).digest("hex");
const only = (keep: (medicine: Medicine) => boolean): Formulary => ({
  ...draftFormulary,
  medicines: draftFormulary.medicines.filter(keep),
});

describe("signaturesNeeded()", () => {
  const paracetamol = only(({ id }) => id === "paracetamol");
  const both = only(({ id }) => ["paracetamol", "morphine"].includes(id));

  it("asks for two where there is a high-alert medicine, or one in force is changed, unmarked or left out", () => {
    expect(signaturesNeeded({ formulary: paracetamol })).toEqual({ signatures: 1, because: [] });
    expect(signaturesNeeded({ formulary: both })).toEqual({ signatures: 2, because: ["morphine"] });
    expect(signaturesNeeded({ formulary: paracetamol, inForce: both }).because).toEqual(["morphine"]);
    const unmarked = {
      ...both,
      medicines: both.medicines.map(({ highAlert: _, ...medicine }) => medicine),
    };
    expect(signaturesNeeded({ formulary: unmarked })).toEqual({ signatures: 2, because: ["morphine"] });
    expect(signaturesNeeded({ formulary: unmarked, inForce: both }).because).toEqual(["morphine"]);
    expect(signaturesNeeded({ formulary: paracetamol, inForce: unmarked }).signatures).toBe(1);
  });

  it("finds in the draft what the list of high-alert medicines names, and no antidote", () => {
    const { because } = signaturesNeeded({ formulary: draftFormulary });
    for (const name of ["morphine", "soluble insulin", "potassium chloride", "rocuronium", "noradrenaline"])
      expect(because).toContain(name);
    for (const name of ["sodium chloride 0.9 %", "digoxin-specific antibody", "naloxone", "paracetamol"])
      expect(because).not.toContain(name);
  });

  it("a second signature is under the same fingerprint, and a change of it shows", async () => {
    const first = { name: "A. Example", role: "pharmacist", date: "2026-11-25" };
    const second = { name: "B. Example", role: "physician", date: "2026-11-26" };
    const signed = await signFormulary({ formulary: both, ...first, second, sha256 });
    expect((await verifySignOff({ formulary: signed, sha256 })).ok).toBe(true);
    expect(listFormulary(signed)).toContain("on 2026-11-25; and by B. Example, physician, on 2026-11-26.");
    const { signOff } = signed;
    if (signOff === undefined) throw new RangeError("It was signed");
    const { second: _, ...alone } = signOff;
    for (const forged of [alone, { ...signOff, second: { ...second, name: "C. Example" } }]) {
      expect((await verifySignOff({ formulary: { ...signed, signOff: forged }, sha256 })).ok).toBe(false);
    }
    expect(withoutSignOff(signed)).toEqual(both);
    const whole = await signFormulary({ formulary: draftFormulary, ...first, second, sha256 });
    expect(validateFormulary(whole).ok).toBe(true);
    const faulty = { ...whole, signOff: { ...whole.signOff, second: { name: "B. Example" } } };
    expect(validateFormulary(faulty).ok).toBe(false);
    await expect(
      signFormulary({ formulary: both, ...first, second: { ...second, date: "2026-02-30" }, sha256 }),
    ).rejects.toThrow(RangeError);
  });

  it("is no two people where one name signs twice in one role", async () => {
    const me = { name: "A. Example", role: "pharmacist", date: "2026-11-25" };
    const second = { ...me, name: " a. example", date: "2026-11-26" };
    const twice = await signFormulary({ formulary: draftFormulary, ...me, second, sha256 });
    expect(validateFormulary(twice)).toEqual({
      ok: false,
      error: [{ place: "sign-off", message: "a. example cannot be both reviewers" }],
    });
    const other = { ...second, role: "physician" };
    expect(
      validateFormulary(await signFormulary({ formulary: draftFormulary, ...me, second: other, sha256 })).ok,
    ).toBe(true);
  });
});
