import type { Formulary } from "@steelyard/core/dosing";
import { draftFormulary, validateFormulary } from "@steelyard/formulary";
import { applyOverlay, compareFormularies, describeDifference } from "@steelyard/formulary/ownership";
import { describe, expect, it } from "vitest";
import { edited, medicineOf, useOf } from "./loose.ts";

const MAXIMUM = "medicines/atropine/uses/bradycardia/options/no-minimum/rule/maximum";
const reason = "as the hospital agreed";
const head = {
  id: "north-site",
  version: "3",
  title: "North site",
  base: { id: draftFormulary.id, version: draftFormulary.version },
};
const lower = {
  change: "set",
  at: MAXIMUM,
  from: { amount: 500, unit: "microgram" },
  to: { amount: 400, unit: "microgram" },
  reason,
};

function faultsOf(
  changes: readonly unknown[],
  base: Formulary = draftFormulary,
  extra: object = {},
): string[] {
  const result = applyOverlay(base, { ...head, changes, ...extra });
  return result.ok ? [] : result.error.map(({ place, message }) => `${place}: ${message}`);
}

function applied(changes: readonly unknown[]): Formulary {
  const result = applyOverlay(draftFormulary, { ...head, changes });
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
}

describe("applyOverlay()", () => {
  it("changes what it says and nothing else, and keeps the record of it", () => {
    const formulary = applied([lower]);
    expect(compareFormularies(draftFormulary, formulary).map(describeDifference)).toEqual([
      `formulary: version "${draftFormulary.version}" → "${draftFormulary.version} + north-site 3"`,
      "atropine, use bradycardia, option no-minimum: maximum 500 → 400 micrograms",
      "formulary: overlay north-site is new",
    ]);
    expect(formulary.overlays).toEqual([
      {
        id: "north-site",
        version: "3",
        title: "North site",
        baseVersion: draftFormulary.version,
        changes: [{ change: "set", at: MAXIMUM, reason }],
      },
    ]);
    expect(formulary.signed).toBe(false);
    expect(validateFormulary(formulary).ok).toBe(true);
  });

  it("adds, sets what was not there, removes, orders the problems and lists the devices", () => {
    const [lorazepam] = draftFormulary.medicines.filter(({ id }) => id === "lorazepam");
    const [use] = lorazepam?.uses ?? [];
    const rounding = { toMl: 0.1, direction: "down", citations: use?.administration.citations };
    const formulary = applied([
      { change: "add", at: "medicines", value: { ...lorazepam, id: "ours" }, reason },
      { change: "add", at: "medicines/ours/uses", value: { ...use, id: "second", title: "second" }, reason },
      { change: "remove", at: "medicines/lorazepam", from: lorazepam, reason },
      {
        change: "set",
        at: "problemOrder",
        from: draftFormulary.problemOrder,
        to: ["seizure", "arrest"],
        reason,
      },
      { change: "set", at: "medicines/ours/uses/second/rounding", to: rounding, reason },
      {
        change: "set",
        at: "deviceEnergiesJ",
        from: draftFormulary.deviceEnergiesJ,
        to: [10, 50, 200],
        reason,
      },
    ]);
    expect(medicineOf(formulary, "ours").uses.map(({ id }: { id: string }) => id)).toContain("second");
    expect(useOf(formulary, "ours", "second").rounding).toEqual(rounding);
    expect(medicineOf(formulary, "lorazepam")).toBeUndefined();
    expect(formulary.problemOrder).toEqual(["seizure", "arrest"]);
    expect(formulary.deviceEnergiesJ).toEqual([10, 50, 200]);
  });

  it("reaches members without an id by their number", () => {
    const at = "medicines/midazolam/uses/seizure-buccal/options/by-age/rule/bands/#2/rule/amount";
    const { amount } = useOf(draftFormulary, "midazolam", "seizure-buccal").options[1].rule.bands[1].rule;
    const formulary = applied([{ change: "set", at, from: amount, to: amount * 1.1, reason }]);
    expect(useOf(formulary, "midazolam", "seizure-buccal").options[1].rule.bands[1].rule.amount).toBe(
      amount * 1.1,
    );
  });

  it("is refused where the base has moved on, with what was expected and what is there", () => {
    const moved = edited((f) => {
      useOf(f, "atropine", "bradycardia").options[0].rule.maximum.amount = 600;
    });
    expect(faultsOf([lower], moved)).toEqual([
      `change 1, ${MAXIMUM}: was {"amount":500,"unit":"microgram"} when the change was made; the base now has {"amount":600,"unit":"microgram"}`,
    ]);
    const gone = edited((f) => f.medicines.splice(f.medicines.indexOf(medicineOf(f, "atropine")), 1));
    expect(faultsOf([lower], gone)).toEqual([
      `change 1, ${MAXIMUM}: is no longer there; it was {"amount":500,"unit":"microgram"}`,
    ]);
  });

  it.each<[string, unknown, RegExp]>([
    [
      "a set without what was there",
      { change: "set", at: MAXIMUM, to: 1, reason },
      /expected nothing there, but the base has/,
    ],
    [
      "a place that does not exist",
      { change: "set", at: "medicines/none/name", to: "x", reason },
      /the base has no/,
    ],
    ["an addition to no list", { change: "add", at: "medicines/atropine/name", value: 1, reason }, /no list/],
    [
      "an addition that is there",
      { change: "add", at: "medicines", value: { id: "atropine" }, reason },
      /has medicines\/atropine already/,
    ],
    [
      "the sign-off",
      { change: "set", at: "signed", from: false, to: true, reason },
      /not for a site to change/,
    ],
    ["a change without a reason", { change: "add", at: "medicines", value: 1 }, /reason: is missing/],
    ["no change of the three", { change: "swap", at: "medicines", reason }, /must be one of/],
    [
      "a result that is no valid formulary",
      { ...lower, to: { amount: 0.4, unit: "microgram" } },
      /below the dose for a child of 15 kg/,
    ],
    ["a value of the wrong form", { ...lower, to: "400 micrograms" }, /atropine/],
  ])("refuses %s", (_, change, message) => {
    const faults = faultsOf([change]);
    expect(faults.join("\n")).toMatch(message);
  });

  it("lists every change that does not fit, and applies none", () => {
    expect(faultsOf([lower, { ...lower, from: 1 }, { ...lower, at: "medicines/none" }])).toHaveLength(2);
  });

  it("is refused by another formulary, a second time, and with no change", () => {
    expect(faultsOf([lower], draftFormulary, { base: { id: "other", version: "1" } })).toEqual([
      "base: is made for other, but this is steelyard-draft",
    ]);
    expect(faultsOf([lower], applied([lower]))[0]).toMatch(/applied already/);
    expect(faultsOf([])[0]).toMatch(/has no change/);
  });
});
