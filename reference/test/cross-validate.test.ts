import { readFileSync } from "node:fs";
import { beforeEach, describe, expect, it, vi } from "vitest";
import { crossValidate, foldOf, folds } from "../src/fit/cross-validate.ts";
import { fitBodyModel } from "../src/fit/fit-body-model.ts";
import type { FitChild } from "../src/fit/select-children.ts";

// No fitting here: what each model was fitted to is what matters.
vi.mock(import("../src/fit/fit-body-model.ts"), async (original) => ({
  ...(await original()),
  fitBodyModel: vi.fn(),
}));

const reference = JSON.parse(
  readFileSync(new URL("../../packages/core/src/body/reference/nhanes.json", import.meta.url), "utf8"),
);
const children = Array.from(
  { length: 5000 },
  (_, i): FitChild => ({ seqn: 1 + 7 * i, sex: i % 2 ? "m" : "f", lengthCm: 100, weightKg: 15, armMm: 150 }),
);

describe("crossValidate()", () => {
  beforeEach(() => {
    let calls = 0;
    vi.mocked(fitBodyModel)
      .mockReset()
      .mockImplementation(() => ({ ...reference, version: String(calls++) }));
  });

  it("judges every child by a model that was fitted to all folds but its own", () => {
    const heldOut = crossValidate(children, { version: "test" });
    const fitted = vi.mocked(fitBodyModel).mock.calls.map(([rows]) => new Set(rows));
    expect(fitted).toHaveLength(folds);
    for (const child of children) {
      const seen = fitted[Number(heldOut(child).version)] as ReadonlySet<FitChild>;
      expect(seen.has(child)).toBe(false);
      // Everyone of another fold was seen.
      expect(seen.size).toBe(children.filter((other) => foldOf(other) !== foldOf(child)).length);
    }
  });

  it("keeps a child in its fold when others come and go, and makes folds of nearly the same size", () => {
    const sizes = new Array<number>(folds).fill(0);
    for (const child of children)
      sizes[foldOf({ ...child, weightKg: 1 })] = (sizes[foldOf(child)] as number) + 1;
    expect(sizes.reduce((sum, n) => sum + n, 0)).toBe(children.length);
    // A fold of 1,000 has a standard deviation of 28 when children fall into folds by chance.
    for (const n of sizes) expect(Math.abs(n - 1000)).toBeLessThan(4 * 28);
  });
});
