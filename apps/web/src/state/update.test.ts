import type { StoredSiteProfile } from "@steelyard/core/body";
import { draftFormulary } from "@steelyard/formulary";
import { describe, expect, test } from "vitest";
import { type BedsideState, emptyBedside } from "./bedside-state.ts";
import type { FormularyInUse, SiteRules } from "./site-rules.ts";
import { type BedsideEvent, update } from "./update.ts";

const after = (...events: readonly BedsideEvent[]): BedsideState => events.reduce(update, emptyBedside);
const typedLength: BedsideEvent = { type: "typed", field: "lengthCm", text: "1,36" };

describe("update()", () => {
  test("keeps what was typed, letter for letter", () => {
    for (const text of ["", "136", "13,5", "abc", " 1e9 ", "136 190", "-4"]) {
      expect(after({ type: "typed", field: "armMm", text }).texts.armMm).toBe(text);
    }
  });

  test("knows which field is under the fingers until they rest", () => {
    expect(after(typedLength).typing).toBe("lengthCm");
    const settled = after(typedLength, { type: "settled" });
    expect(settled.typing).toBeUndefined();
    expect(settled.texts.lengthCm).toBe("1,36");
    expect(update(settled, { type: "settled" })).toBe(settled);
  });

  test("takes other numbers into their fields", () => {
    const values = [
      { field: "armMm", value: 190 },
      { field: "ageMonths", value: 108 },
    ] as const;
    const { texts } = after({ type: "proposal-accepted", proposal: { type: "values", values } });
    expect(texts).toMatchObject({ armMm: "190", ageMonths: "108 mo" });
  });

  test("takes a unit proposal into its own field and leaves the others alone", () => {
    const state = after({ type: "typed", field: "armMm", text: "19" }, typedLength, {
      type: "proposal-accepted",
      proposal: { type: "unit", field: "lengthCm", typed: 1.36, from: "m", value: 136 },
    });
    expect(state.texts).toMatchObject({ lengthCm: "136", armMm: "19" });
    expect(state.typing).toBeUndefined();
  });

  test("keeps the unit of an age that was proposed", () => {
    const state = after({
      type: "proposal-accepted",
      proposal: { type: "unit", field: "ageMonths", typed: 9, from: "y", value: 108 },
    });
    expect(state.texts.ageMonths).toBe("9 y");
  });

  test("swaps length and arm when that is accepted", () => {
    const state = after({ type: "proposal-accepted", proposal: { type: "swap", lengthCm: 136, armMm: 190 } });
    expect(state.texts).toMatchObject({ lengthCm: "136", armMm: "190" });
  });

  test("opens an optional field once", () => {
    const state = after({ type: "asked-for", field: "sex" }, { type: "asked-for", field: "sex" });
    expect(state.open).toEqual(["sex"]);
  });

  test("sets the last child aside and brings it back whole", () => {
    const full = after(typedLength, { type: "typed", field: "sex", text: "f" });
    const next = update(full, { type: "next-child" });
    expect(next.texts).toEqual(emptyBedside.texts);
    expect(update(next, { type: "next-child" }).setAside).toEqual(full.texts);
    const back = update(next, { type: "brought-back" });
    expect(back.texts).toEqual(full.texts);
    expect(back.open).toEqual(["sex"]);
  });

  test("lets go of the last child once the next one has a number", () => {
    const state = after(typedLength, { type: "next-child" }, { type: "typed", field: "armMm", text: "1" });
    expect(state.setAside).toBeUndefined();
    expect(update(state, { type: "brought-back" })).toBe(state);
  });

  test("says that values come from before a reload until one is touched", () => {
    const found = after({ type: "found", texts: { lengthCm: "136", ageMonths: "9 y" }, carriedOver: true });
    expect(found).toMatchObject({ carriedOver: true, open: ["ageMonths"] });
    expect(update(found, { type: "typed", field: "armMm", text: "1" }).carriedOver).toBe(false);
    expect(after({ type: "found", texts: {}, carriedOver: true }).carriedOver).toBe(false);
  });

  test("a choice is settled at once", () => {
    expect(after({ type: "chosen", field: "sex", text: "f" })).toMatchObject({
      texts: { sex: "f" },
      typing: undefined,
    });
  });

  test("a problem turns and turns back; a new child starts with the sheet as it was at first", () => {
    const turn: BedsideEvent = { type: "turned", problem: "seizure" };
    expect(after(turn).turned).toEqual(["seizure"]);
    expect(after(turn, { type: "turned", problem: "pain" }, turn).turned).toEqual(["pain"]);
    const searched: BedsideEvent = { type: "searched", text: "ketamine" };
    expect(after(turn, searched, { type: "next-child" })).toMatchObject({ turned: [], search: "" });
  });

  test("what was filled in before a reload is open after it", () => {
    const texts = { waistCm: "60", people: "1", armMm2: "190" };
    expect(after({ type: "found", texts, carriedOver: true }).open).toEqual(["waistCm", "lengthCm2"]);
  });
});

describe("rules of the site", () => {
  const draft: FormularyInUse = { index: { version: "draft", signed: false, problems: [] } };
  const own = (version: string): FormularyInUse => ({
    index: { version, signed: true, problems: [] },
    own: { formulary: draftFormulary, fingerprint: version, from: "file", signers: [] },
  });
  const known: BedsideEvent = { type: "formulary-known", formulary: draft };
  const came = (rules: SiteRules): BedsideEvent => ({ type: "rules-came", rules });
  const cleared: BedsideEvent = { type: "typed", field: "lengthCm", text: "" };
  const nextChild: BedsideEvent = { type: "next-child" };
  const inUse = ({ formulary, next }: BedsideState) => [
    formulary?.index.version,
    next?.formulary?.index.version,
  ];

  test("are in use at once where nothing has been typed, and from the next child on where something has", () => {
    expect(inUse(after(known, came({ formulary: own("ours") })))).toEqual(["ours", undefined]);
    const waiting = after(known, typedLength, cleared, came({ formulary: own("ours") }));
    expect(inUse(waiting)).toEqual(["draft", "ours"]);
    expect(inUse(update(waiting, nextChild))).toEqual(["ours", undefined]);
  });

  test("that are withdrawn before the next child came are never in use", () => {
    const state = after(
      known,
      typedLength,
      came({ formulary: own("ours") }),
      came({ formulary: draft }),
      nextChild,
    );
    expect(inUse(state)).toEqual(["draft", undefined]);
  });

  test("of the child brought back are those that it had; the next child has the others", () => {
    const back = after(known, typedLength, came({ formulary: own("ours") }), nextChild, {
      type: "brought-back",
    });
    expect(inUse(back)).toEqual(["draft", "ours"]);
    expect(inUse(update(back, nextChild))).toEqual(["ours", undefined]);
  });

  test("a calibration waits like a formulary, and goes like one", () => {
    const profile = { modelVersion: "m" } as StoredSiteProfile;
    const waiting = after(known, typedLength, came({ site: { profile } }));
    expect(waiting.site).toBeUndefined();
    const next = update(waiting, nextChild);
    expect([next.site, next.next]).toEqual([profile, undefined]);
    expect(update(next, came({ site: { profile: undefined } })).site).toBeUndefined();
  });

  test("a calibration taken while none waits is the next child's", () => {
    const [old, own] = ["old", "own"].map((modelVersion) => ({ modelVersion }) as StoredSiteProfile);
    const state = after(
      known,
      { type: "site-known", site: old },
      typedLength,
      came({ site: { profile: undefined } }),
      came({ site: { profile: own } }),
    );
    expect(state.site).toBe(old);
    expect(update(state, nextChild).site).toBe(own);
  });
});
