import { readFileSync } from "node:fs";
import { beforeEach, describe, expect, it, vi } from "vitest";
import { crossValidate, foldOf, folds } from "../src/fit/cross-validate.ts";
import { fitBodyModels } from "../src/fit/fit-body-models.ts";
import type { FitChild } from "../src/fit/fit-child.ts";

// No fitting here: what each model was fitted to is what matters.
vi.mock(import("../src/fit/fit-body-models.ts"), () => ({ fitBodyModels: vi.fn() }));

const shipped = (name: string) =>
  JSON.parse(
    readFileSync(new URL(`../../packages/core/src/body/reference/${name}.json`, import.meta.url), "utf8"),
  );
const references = { byLength: shipped("by-length"), byAge: shipped("by-age") };
const options = { version: "test", sourceIds: [] };

const child = (childId: number): FitChild => ({
  source: "invented",
  childId,
  sex: childId % 2 ? "m" : "f",
  lengthCm: 100,
  weightKg: 15,
  armMm: 150,
});
const children = Array.from({ length: 5000 }, (_, i) => child(1 + 7 * i));

describe("crossValidate()", () => {
  beforeEach(() => {
    let calls = 0;
    vi.mocked(fitBodyModels)
      .mockReset()
      .mockImplementation(() => {
        const version = String(calls++);
        return { byLength: { ...references.byLength, version }, byAge: { ...references.byAge, version } };
      });
  });

  it("judges every child by a model that was fitted to all folds but its own", () => {
    const heldOut = crossValidate(children, options);
    const fitted = vi.mocked(fitBodyModels).mock.calls.map(([rows]) => new Set(rows));
    expect(fitted).toHaveLength(folds);
    const inFold = Array.from(
      { length: folds },
      (_, fold) => children.filter((own) => foldOf(own) === fold).length,
    );
    for (const own of children) {
      const seen = fitted[Number(heldOut(own).version)] as ReadonlySet<FitChild>;
      expect(seen.has(own)).toBe(false);
      // Everyone of another fold was seen.
      expect(seen.size).toBe(children.length - (inFold[foldOf(own)] as number));
    }
  });

  it("keeps all visits of a child out of the model that judges any of them", () => {
    const visits = [
      child(8),
      { ...child(8), lengthCm: 104 },
      ...children.filter(({ childId }) => childId !== 8),
    ];
    const heldOut = crossValidate(visits, options);
    const fitted = vi.mocked(fitBodyModels).mock.calls.map(([rows]) => rows);
    const seen = fitted[Number(heldOut(visits[1] as FitChild).version)] as readonly FitChild[];
    expect(seen.filter(({ childId }) => childId === 8)).toEqual([]);
  });

  it("has a published curve, which is no child, in every fit", () => {
    const curve = { ...child(0), source: "a published curve" };
    crossValidate([...children, curve], options);
    const fitted = vi.mocked(fitBodyModels).mock.calls.map(([rows]) => rows);
    expect(fitted.every((rows) => rows.includes(curve))).toBe(true);
  });

  it("keeps a child in its fold when others come and go, and makes folds of nearly the same size", () => {
    const sizes = new Array<number>(folds).fill(0);
    for (const own of children) {
      const fold = foldOf({ ...own, weightKg: 1 });
      expect(fold).toBe(foldOf(own));
      sizes[fold] = (sizes[fold] as number) + 1;
    }
    // A fold of 1,000 has a standard deviation of 28 when children fall into folds by chance.
    for (const n of sizes) expect(Math.abs(n - 1000)).toBeLessThan(4 * 28);
  });
});
