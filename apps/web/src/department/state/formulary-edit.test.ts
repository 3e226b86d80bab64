import { draftFormulary, validateFormulary } from "@steelyard/formulary";
import { compareFormularies, type DoseTableRow, doseTable } from "@steelyard/formulary/ownership";
import { describe, expect, it } from "vitest";
import { type FormularyEdit, isChanged, readEdit, startEdit, updateEdit } from "./formulary-edit.ts";
import { effectOn, isEffect } from "./formulary-effect.ts";

const row = doseTable(draftFormulary).find(
  ({ medicine, use }) => medicine === "adrenaline" && use === "arrest",
) as DoseTableRow;
const start = startEdit(draftFormulary);
const type = (edit: FormularyEdit, column: "amount" | "maximum", text: string): FormularyEdit =>
  updateEdit(edit, { type: "cell-typed", row, column, text });
const named = (edit: FormularyEdit): FormularyEdit =>
  updateEdit(edit, { type: "version-typed", text: "resus 1" });

describe("readEdit()", () => {
  it("makes a whole formulary of its own version from one changed dose, unsigned, and nothing else differs", () => {
    const read = readEdit(named(type(start, "amount", "9")));
    expect(read.ok).toBe(true);
    if (!read.ok) return;
    expect(read.value).toMatchObject({ version: "resus 1", signed: false });
    expect(compareFormularies(draftFormulary, read.value).map(({ field }) => field)).toEqual([
      "version",
      "dose",
    ]);
  });

  it("tells what is wrong at the cell where it was typed, and where a whole dose makes no sense", () => {
    const letters = readEdit(type(start, "amount", "ten"));
    expect(letters.ok || letters.error[0]).toMatchObject({
      row: "adrenaline/arrest/by-weight/first",
      column: "amount",
    });
    const low = readEdit(type(start, "maximum", "0.001"));
    expect(low.ok || low.error[0]?.message).toMatch(/maximum 1 microgram is below/);
  });

  it("takes a use out with what only it cites, and leaves a formulary that holds", () => {
    const removed = updateEdit(start, { type: "use-removed", key: "adrenaline/croup" });
    const read = readEdit(named(removed));
    expect(read.ok).toBe(true);
    expect(read.ok && validateFormulary(read.value).ok).toBe(true);
    const whole = draftFormulary.medicines.find(({ id }) => id === "amiodarone");
    const all = (whole?.uses ?? []).reduce(
      (edit, { id }) => updateEdit(edit, { type: "use-removed", key: `amiodarone/${id}` }),
      start,
    );
    const without = readEdit(named(all));
    expect(without.ok && without.value.medicines.some(({ id }) => id === "amiodarone")).toBe(false);
    expect(without.ok).toBe(true);
  });

  it("changes a strength, and refuses one that is no number", () => {
    const key = "adrenaline/ampoule-1-mg-per-ml";
    const typed = (text: string): FormularyEdit =>
      updateEdit(start, { type: "strength-typed", key, text, was: "1" });
    expect(readEdit(named(typed("0.5"))).ok).toBe(true);
    const wrong = readEdit(typed("0"));
    expect(wrong.ok || wrong.error[0]).toMatchObject({ strength: key });
    expect(isChanged(typed("1"))).toBe(false);
  });

  it("counts what is typed back as no change", () => {
    expect(isChanged(type(start, "amount", "9"))).toBe(true);
    expect(isChanged(type(type(start, "amount", "9"), "amount", row.amount))).toBe(false);
    expect(updateEdit(type(start, "amount", "9"), { type: "dropped" })).toEqual(start);
  });
});

describe("effectOn()", () => {
  it("shows old and new dose and volume of every child, for the one use that changed", () => {
    const read = readEdit(named(type(start, "amount", "9")));
    if (!read.ok) throw new Error("the edit of the test is at fault");
    const rows = effectOn(draftFormulary, read.value, ["adrenaline"]);
    const changed = rows.filter(isEffect);
    expect(changed.map(({ id }) => id)).toEqual(["adrenaline.arrest"]);
    // 20 kg: 10 and 9 micrograms/kg of 0.1 mg/mL, by hand.
    const cell = changed[0]?.cells[2];
    expect(cell?.before).toMatchObject({ dose: { amount: 200, unit: "microgram" }, volume: { ml: 2 } });
    expect(cell?.after).toMatchObject({ dose: { amount: 180, unit: "microgram" }, volume: { ml: 1.8 } });
  });

  it("marks a use that is gone", () => {
    const removed = readEdit(named(updateEdit(start, { type: "use-removed", key: "adrenaline/arrest" })));
    if (!removed.ok) throw new Error("the edit of the test is at fault");
    const [gone] = effectOn(draftFormulary, removed.value, ["adrenaline"]).filter(isEffect);
    expect(gone?.id).toBe("adrenaline.arrest");
    expect(gone?.cells.every(({ after }) => after === undefined)).toBe(true);
  });
});
