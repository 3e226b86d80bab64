import { computeChild } from "@steelyard/core/child";
import { centimetres, millimetres } from "@steelyard/core/units";
import { draftFormulary } from "@steelyard/formulary";
import { describe, expect, test } from "vitest";
import { emptyBedside } from "./bedside-state.ts";
import { type BedsideView, readBedside } from "./read-bedside.ts";

type Texts = Partial<typeof emptyBedside.texts>;
const read = (texts: Texts, typing?: keyof Texts): BedsideView =>
  readBedside({ texts: { ...emptyBedside.texts, ...texts }, typing });

describe("readBedside()", () => {
  test("has nothing to say about empty fields", () => {
    expect(read({})).toMatchObject({ child: undefined, messages: [], refusal: undefined });
  });

  test("shows exactly what the library computes", () => {
    const view = read({ lengthCm: "136", armMm: "190" });
    const measurements = { lengthCm: centimetres(136), armMm: millimetres(190) };
    const child = computeChild({ measurements, formulary: draftFormulary });
    expect(child.ok && child.value.sheet.length).toBeGreaterThan(10);
    expect(child.ok && child.value).toEqual(view.child);
    expect(view.components.reduce((sum, { probability }) => sum + probability, 0)).toBeCloseTo(1, 9);
  });

  test("takes a comma for a point and spaces for nothing", () => {
    expect(read({ lengthCm: " 68,5 " }).child?.weight).toEqual(read({ lengthCm: "68.5" }).child?.weight);
  });

  test("gives a weight from length alone, and says so", () => {
    const view = read({ lengthCm: "136" });
    expect(view.child?.warnings).toEqual([{ type: "no-girth" }]);
  });

  test("an arm alone gives no weight and says why", () => {
    const view = read({ armMm: "190" });
    expect(view.child).toBeUndefined();
    expect(view.refusal).toContain("Length is needed");
  });

  test.each<[keyof Texts, string, number]>([
    ["lengthCm", "1,36", 136],
    ["lengthCm", "1360", 136],
    ["armMm", "19", 190],
  ])("%s %s: no weight, and the likely correction to press", (field, text, value) => {
    const view = read({ lengthCm: "136", armMm: "190", [field]: text });
    expect(view.child).toBeUndefined();
    const [message] = view.messages;
    expect(message).toMatchObject({ field, kind: "issue" });
    expect(message?.sentence).not.toContain("Did you mean");
    expect(message?.proposals).toContainEqual(expect.objectContaining({ field, value }));
  });

  test.each(["abc", "-136", "1e9", "136 190", "0"])("length %s: a sentence and no weight", (text) => {
    const view = read({ lengthCm: text, armMm: "190" });
    expect(view.child).toBeUndefined();
    expect(view.messages.map(({ field }) => field)).toEqual(["lengthCm"]);
    expect(view.messages[0]?.sentence).toMatch(/^.+\.$/);
  });

  test("half a number is no reason to complain", () => {
    const view = read({ lengthCm: "1", armMm: "190" }, "lengthCm");
    expect(view).toMatchObject({ child: undefined, messages: [] });
  });

  test("a doubtful age is said and does not take the weight away", () => {
    const view = read({ lengthCm: "136", armMm: "190", ageMonths: "9" });
    expect(view.child?.weight).toEqual(read({ lengthCm: "136", armMm: "190" }).child?.weight);
    expect(view.messages[0]).toMatchObject({ field: "ageMonths", kind: "issue" });
  });

  test("a converted unit is a notice and counts", () => {
    const view = read({ lengthCm: "136", armMm: "19 cm" });
    expect(view.messages).toMatchObject([{ field: "armMm", kind: "notice", proposals: [] }]);
    expect(view.child?.weight.totalKg).toBe(read({ lengthCm: "136", armMm: "190" }).child?.weight.totalKg);
  });

  test("a length the model does not serve is refused with its range", () => {
    const view = read({ lengthCm: "230", armMm: "300" });
    expect(view.child).toBeUndefined();
    expect(view.messages[0]?.sentence).toMatch(/230\scm is outside the range .* \d+\sto\s\d+\scm/);
  });

  test("sex is taken into account", () => {
    const rests = (sex: string) => read({ lengthCm: "136", armMm: "190", sex }).child?.weight.rests;
    expect(rests("f")).toEqual(["lengthCm", "armMm", "sex"]);
    expect(rests("")).toEqual(["lengthCm", "armMm"]);
  });
});
