import { estimateWeight } from "@steelyard/core/body";
import { centimetres, millimetres } from "@steelyard/core/units";
import { describe, expect, it } from "vitest";
import { importStudy, openStudyFile } from "../import/index.ts";
import { estimateByMethod } from "./estimate-by-method.ts";
import { methodId, readMethod } from "./read-method.ts";

const text =
  "length_cm,arm_mm,age_months,sex,weight_kg,tape kg\n136,190,108,f,28,30\n85,150,,m,11,\n90,,30,m,12,13\n";

async function table() {
  const file = await openStudyFile(new TextEncoder().encode(text));
  const study = file.ok ? importStudy(file.value) : file;
  if (!study.ok) throw new Error("no table");
  return study.value.table;
}

describe("estimateByMethod()", () => {
  it("gives the body model exactly the inputs chosen, and no estimate to a child that lacks one", async () => {
    const { estimateKg, served, low95Kg } = estimateByMethod(await table(), {
      type: "body",
      inputs: ["lengthCm", "armMm"],
    });
    const own = estimateWeight({ lengthCm: centimetres(136), armMm: millimetres(190) });
    expect(own.ok && own.value.totalKg).toBe(estimateKg[0]);
    expect(own.ok && own.value.low95Kg).toBe(low95Kg?.[0]);
    expect([served, estimateKg[2]]).toEqual([2, Number.NaN]);
  });

  it("takes a column as it is and a formula as printed", async () => {
    expect(
      Array.from(estimateByMethod(await table(), { type: "column", column: "tape kg" }).estimateKg),
    ).toEqual([30, Number.NaN, 13]);
    // 3 x age + 7 at 9 and 2 completed years.
    expect(
      Array.from(estimateByMethod(await table(), { type: "formula", sourceId: "luscombe2007" }).estimateKg),
    ).toEqual([34, Number.NaN, 13]);
  });
});

describe("readMethod()", () => {
  it.each(["body:length+arm+sex", "formula:luscombe2007", "tape kg"])(
    "reads %s and writes it the same",
    (text) => {
      const method = readMethod(text, ["tape kg"]);
      expect(method.ok && methodId(method.value)).toBe(text);
    },
  );

  it("says what there is when it does not know a method", () => {
    const method = readMethod("body:hat", ["tape kg"]);
    expect(method).toMatchObject({ ok: false, error: { type: "method-unknown", columns: ["tape kg"] } });
  });
});
