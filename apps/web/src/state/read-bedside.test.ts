import { estimateWeight, type Measurements } from "@steelyard/core/body";
import { computeChild } from "@steelyard/core/child";
import { draftFormulary } from "@steelyard/formulary";
import { describe, expect, test } from "vitest";
import { emptyBedside } from "./bedside-state.ts";
import { type BedsideView, readBedside } from "./read-bedside.ts";
import { slipMessages } from "./slip-messages.ts";

type Texts = Partial<typeof emptyBedside.texts>;
/** What the screen shows, with the slips that the second part of the page recognises. */
function read(texts: Texts, typing?: keyof Texts): BedsideView {
  const view = readBedside({ texts: { ...emptyBedside.texts, ...texts }, typing, today: "2026-11-25" });
  return { ...view, messages: [...view.messages, ...slipMessages({ ...view, typing })] };
}
const totalKg = (view: BedsideView): number | undefined => view.child?.estimate.totalKg;
const warnings = (view: BedsideView): unknown => view.child?.estimate.warnings;

describe("readBedside()", () => {
  test("has nothing to say about empty fields", () => {
    expect(read({})).toMatchObject({ child: undefined, messages: [], refusal: undefined });
  });

  test.each<[string, Texts]>([
    ["length and arm", { lengthCm: "136", armMm: "190" }],
    ["age alone", { ageMonths: "9 y" }],
    ["a scale weight with a length", { lengthCm: "136", scaleKg: "31.5" }],
    [
      "everything",
      { lengthCm: "136", armMm: "190", waistCm: "60", sex: "f", posture: "seated", people: "1" },
    ],
  ])("%s: the weights are those of the whole report", (_, texts) => {
    const { measurements = {}, estimate, weights } = read(texts).child ?? {};
    const idealKg = weights?.idealKg;
    const report = computeChild({ measurements, formulary: draftFormulary });
    expect(report.ok && report.value.weight).toMatchObject({
      totalKg: estimate?.totalKg,
      low95Kg: estimate?.low95Kg,
      high95Kg: estimate?.high95Kg,
      rests: estimate?.rests,
      ...(idealKg !== undefined && { idealKg }),
    });
    expect(report.ok && report.value.warnings).toEqual(estimate?.warnings);
  });

  test("takes a comma for a point and spaces for nothing", () => {
    expect(totalKg(read({ lengthCm: " 68,5 " }))).toEqual(totalKg(read({ lengthCm: "68.5" })));
    expect(totalKg(read({ lengthCm: "68.5" }))).toBeGreaterThan(5);
  });

  test("gives a weight from length alone, and says so", () => {
    const view = read({ lengthCm: "136" });
    expect(warnings(view)).toEqual([{ type: "no-girth" }]);
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
    expect(totalKg(view)).toBeGreaterThan(20);
    expect(totalKg(view)).toEqual(totalKg(read({ lengthCm: "136", armMm: "190" })));
    expect(view.messages[0]).toMatchObject({ field: "ageMonths", kind: "issue" });
  });

  test("a converted unit is a notice and counts", () => {
    const view = read({ lengthCm: "136", armMm: "19 cm" });
    expect(view.messages).toMatchObject([{ field: "armMm", kind: "notice", proposals: [] }]);
    expect(totalKg(view)).toBe(totalKg(read({ lengthCm: "136", armMm: "190" })));
  });

  test("a length the model does not serve is refused with its range", () => {
    const view = read({ lengthCm: "230", armMm: "300" });
    expect(view.child).toBeUndefined();
    expect(view.messages[0]?.sentence).toMatch(/230\scm is outside the range .* \d+\sto\s\d+\scm/);
  });

  test("sex is taken into account", () => {
    const rests = (sex: string) => read({ lengthCm: "136", armMm: "190", sex }).child?.estimate.rests;
    expect(rests("f")).toEqual(["lengthCm", "armMm", "sex"]);
    expect(rests("")).toEqual(["lengthCm", "armMm"]);
  });

  test("a waist that cannot be is said, with its correction, and left out", () => {
    const view = read({ lengthCm: "136", armMm: "190", waistCm: "600" });
    expect(totalKg(view)).toBe(totalKg(read({ lengthCm: "136", armMm: "190" })));
    expect(view.messages).toMatchObject([{ field: "waistCm", kind: "issue" }]);
    expect(view.messages[0]?.proposals).toContainEqual(expect.objectContaining({ value: 60 }));
  });

  test("a waist beyond the reach of the model is said and left out", () => {
    const view = read({ lengthCm: "136", armMm: "190", waistCm: "240" });
    expect(totalKg(view)).toBe(totalKg(read({ lengthCm: "136", armMm: "190" })));
    expect(view.messages[0]?.sentence).toMatch(/Waist circumference 240\scm is outside the range/);
  });

  test("how the length was taken widens the range, and says nothing by itself", () => {
    const width = (texts: Texts): number => {
      const { low95Kg = 0, high95Kg = 0 } =
        read({ lengthCm: "136", armMm: "190", ...texts }).child?.estimate ?? {};
      return high95Kg - low95Kg;
    };
    expect(width({ posture: "seated", people: "1" })).toBeGreaterThan(
      width({ posture: "seated", people: "2" }),
    );
    expect(width({ posture: "seated", people: "2" })).toBeGreaterThan(width({}));
    expect(read({ posture: "seated", people: "1" })).toMatchObject({ child: undefined, refusal: undefined });
  });

  test.each<[string, Texts, string]>([
    ["no circumference", { lengthCm: "136" }, "no-girth"],
    ["no length", { ageMonths: "9 y", armMm: "190" }, "no-length"],
    ["an arm beyond the data", { lengthCm: "136", armMm: "400" }, "measurement-extrapolated"],
    ["no data on it", { lengthCm: "136", armMm: "190", headCm: "53" }, "measurement-not-used"],
    ["a conflict", { lengthCm: "136", armMm: "190", carerKg: "80" }, "measurement-conflict"],
    ["two in conflict", { lengthCm: "136", armMm: "170", waistCm: "95" }, "measurement-conflict"],
    ["oedema", { lengthCm: "136", armMm: "190", oedema: "yes" }, "measurement-set-aside"],
    ["a pregnancy", { lengthCm: "160", armMm: "260", pregnant: "yes" }, "usual-weight"],
    ["a missing limb", { lengthCm: "136", armMm: "190", missingLimb: "leg" }, "missing-limb"],
    ["an unlikely scale", { lengthCm: "136", armMm: "190", scaleKg: "80" }, "scale-weight-unlikely"],
  ])("%s is a warning of the weight", (_, texts, type) => {
    expect(warnings(read(texts))).toContainEqual(expect.objectContaining({ type }));
  });

  test("an earlier weight enters with both ages, and is said to wait for the second", () => {
    const earlier: Texts = { lengthCm: "136", armMm: "190", ageMonths: "10 y", earlierKg: "25" };
    expect(read(earlier).messages).toMatchObject([{ kind: "notice", field: "earlierKg" }]);
    const both = read({ ...earlier, earlierAgeMonths: "9 y" });
    expect(both.child?.estimate.rests).toContain("earlier");
    expect(both.messages).toEqual([]);
  });

  test("what is measured is what the model is given", () => {
    const texts: Texts = {
      lengthCm: "136",
      armMm: "190",
      thighCm: "36",
      calfCm: "27",
      build: "thin",
      carerKg: "27",
    };
    const measurements = { lengthCm: 136, armMm: 190, thighCm: 36, calfCm: 27, build: "thin", carerKg: 27 };
    expect(read(texts).child?.measurements).toEqual(measurements);
    const estimate = estimateWeight(measurements as Measurements);
    expect(estimate.ok && estimate.value.totalKg).toBe(totalKg(read(texts)));
  });

  test.each<[string, Texts, string, object]>([
    [
      "pounds",
      { carerKg: "62" },
      "carerKg",
      { type: "unit", field: "carerKg", typed: 62, from: "lb", value: 28.12272694 },
    ],
    [
      "years as months",
      { ageMonths: "9 mo" },
      "ageMonths",
      { type: "unit", field: "ageMonths", typed: 9, from: "y", value: 108 },
    ],
    [
      "a nought too many",
      { scaleKg: "280" },
      "scaleKg",
      { type: "values", values: [{ field: "scaleKg", value: 28 }] },
    ],
    [
      "a length in inches",
      { lengthCm: "53.5" },
      "lengthCm",
      expect.objectContaining({ from: "in", value: 135.89 }),
    ],
  ])("%s: what was perhaps meant, to press", (_, texts, field, proposal) => {
    const { messages } = read({ lengthCm: "136", armMm: "190", ...texts });
    expect(messages).toContainEqual(expect.objectContaining({ field, kind: "notice" }));
    expect(messages.find((message) => message.field === field)?.proposals[0]).toEqual(proposal);
    expect(read({ lengthCm: "136", armMm: "190", ...texts }, field as keyof Texts).messages).toEqual([]);
  });

  test("nothing is said twice, and nothing of measurements that agree", () => {
    expect(read({ lengthCm: "136", armMm: "190", waistCm: "58", ageMonths: "9 y" }).messages).toEqual([]);
    expect(read({ lengthCm: "136", armMm: "19" }).messages).toHaveLength(1);
    expect(read({ lengthCm: "136", armMm: "190", waistCm: "600" }).messages).toHaveLength(1);
  });
});

describe("readings, parts and days", () => {
  const weight = (texts: Texts) => totalKg(read(texts));
  const said = (texts: Texts) => read(texts).messages.map(({ field, sentence }) => `${field}: ${sentence}`);

  test("a child longer than the tape is measured in two parts", () => {
    expect(weight({ lengthCm: "150 + 22,5" })).toBe(weight({ lengthCm: "172.5" }));
    expect(said({ lengthCm: "150+22.5" })).toEqual(["lengthCm: 150+22.5 = 172.5\u00a0cm."]);
  });

  test("two readings are averaged and counted, of three the middle one counts", () => {
    const { measurements } = read({ lengthCm: "136", armMm: "190", lengthCm2: "137", armMm2: "194" });
    expect(measurements).toMatchObject({ lengthCm: 136.5, lengthReadings: 2, armMm: 192, armReadings: 2 });
    expect(read({ armMm: "190", armMm2: "210", armMm3: "192" }).measurements.armMm).toBe(192);
    const one = read({ lengthCm: "136", armMm: "190" }).child?.estimate;
    const two = read({ lengthCm: "136", armMm: "190", armMm2: "190", lengthCm2: "136" }).child?.estimate;
    const width = (of: typeof one) => (of === undefined ? Number.NaN : of.high95Kg - of.low95Kg);
    expect(width(two)).toBeLessThan(width(one));
  });

  test("a third reading is asked for where two differ too much", () => {
    const [sentence] = said({ armMm: "190", armMm2: "202" });
    expect(sentence).toMatch(
      /^armMm2: The readings are 12\smm apart; .* 8\.7\smm at most\. Read a third time/,
    );
  });

  test("a doubtful second reading says so in its own place and takes nothing away", () => {
    const view = read({ lengthCm: "136", lengthCm2: "1.37" });
    expect(view.measurements.lengthCm).toBe(136);
    expect(view.messages).toMatchObject([{ field: "lengthCm2", kind: "issue" }]);
    expect(view.messages[0]?.proposals.length).toBeGreaterThan(0);
  });

  test("a date of birth is an age, unless an age was typed", () => {
    const byDate = read({ lengthCm: "136", birthDate: "2017-11-25" });
    expect(byDate.measurements.ageMonths).toBeCloseTo(108, 1);
    expect(byDate.messages[0]?.sentence).toBe("9 years 0 months old.");
    expect(read({ lengthCm: "136", birthDate: "2017-11-25", ageMonths: "8 y" }).measurements.ageMonths).toBe(
      96,
    );
  });

  test.each(["2027-01-01", "1999-01-01"])("%s is no child's date of birth", (birthDate) => {
    const view = read({ lengthCm: "136", birthDate });
    expect(view.measurements.ageMonths).toBeUndefined();
    expect(view.messages).toMatchObject([{ field: "birthDate", kind: "issue" }]);
  });

  test("an earlier weight is dated by its day", () => {
    const texts = { lengthCm: "136", ageMonths: "9 y", earlierKg: "24", earlierDate: "2026-05-25" };
    expect(read(texts).measurements.earlier?.ageMonths).toBeCloseTo(108 - 6.05, 1);
    expect(said({ ...texts, ageMonths: "" })).toContain(
      "earlierDate: An earlier weight needs the age now as well.",
    );
    expect(said({ ...texts, earlierDate: "2027-05-25" })).toContain(
      "earlierDate: That day is still to come.",
    );
    expect(said({ ...texts, earlierDate: "2010-05-25" })).toContain(
      "earlierDate: That day is before the birth.",
    );
  });
});
