import { type ChildReport, computeChild } from "@steelyard/core/child";
import type { DoseLine } from "@steelyard/core/dosing";
import { centimetres, formatQuantity, millimetres } from "@steelyard/core/units";
import { draftFormulary } from "@steelyard/formulary";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { type Bedside, openPlace, type Place, readable, sizes } from "./support/bedside.ts";

const threeLines = ["adrenaline.arrest", "amiodarone.arrest", "ketamine.induction"];

/** What the library says, computed here and not in the browser. */
function expected(lengthCm: number, armMm: number): ChildReport {
  const child = computeChild({
    measurements: { lengthCm: centimetres(lengthCm), armMm: millimetres(armMm) },
    formulary: draftFormulary,
  });
  if (!child.ok) throw new Error(`no weight: ${child.error.type}`);
  return child.value;
}

function drawOf({ sheet }: ChildReport, id: string): string {
  const line = sheet.find(
    (candidate): candidate is DoseLine => candidate.id === id && !candidate.unavailable,
  );
  if (line?.volume === undefined) throw new Error(`${id} has no volume`);
  return readable(formatQuantity({ amount: line.volume.ml, unit: "mL" }));
}

/** Types the two numbers like a person and compares what stands there with the library. */
async function firstDose(bedside: Bedside, lengthCm: number, armMm: number): Promise<void> {
  await bedside.length.pressSequentially(String(lengthCm));
  await bedside.arm.pressSequentially(String(armMm));
  const report = expected(lengthCm, armMm);
  const tenths = (kg: number): string => String(Math.round(kg * 10) / 10);
  await expect.poll(bedside.total).toBe(`${tenths(report.weight.totalKg)} kg`);
  expect(await bedside.card()).toContain(
    `95 % range ${tenths(report.weight.low95Kg)} to ${tenths(report.weight.high95Kg)} kg`,
  );
  expect(await bedside.card()).toContain(`Ideal weight ${tenths(report.weight.idealKg ?? Number.NaN)} kg`);
  await bedside.lines.first().waitFor();
  const ofArrest = report.sheet.filter(({ problem }) => problem === "arrest");
  expect(await bedside.lines.count()).toBe(ofArrest.length);
  await bedside.openProblems();
  expect(await bedside.lines.count()).toBe(report.sheet.length);
  for (const id of threeLines) expect(await bedside.draw(id), id).toBe(drawOf(report, id));
}

describe("first dose", () => {
  let place: Place;
  beforeEach(async () => {
    place = await openPlace();
  });
  afterEach(() => place.close());

  test.each(Object.entries(sizes))(
    "on a %s: two numbers, weight and doses; again without a network",
    async (_, viewport) => {
      const bedside = await place.visit({ viewport });
      await firstDose(bedside, 136, 190);
      await bedside.readyOffline();

      await place.stopServer();
      await expect(fetch(place.url)).rejects.toThrow();
      await bedside.page.reload();
      expect(await bedside.length.inputValue()).toBe("136");
      await bedside.page.getByRole("button", { name: "New child" }).click();
      await firstDose(bedside, 92.5, 148);
      expect(bedside.complaints).toEqual([]);
    },
  );

  test("the working, the source and its mark stand behind a dose", async () => {
    const bedside = await place.visit();
    await firstDose(bedside, 136, 190);
    const line = bedside.page.locator('[data-line="adrenaline.arrest"]');
    await line.locator("summary").click();
    const report = expected(136, 190);
    const kg = Math.round(report.weight.totalKg * 10) / 10;
    const detail = readable(await line.locator(".dose-detail").innerText());
    expect(detail).toContain(`${kg} kg`);
    expect(detail).toContain("÷");
    expect(detail).toMatch(/Sources .*\((read in the source|from memory, to be verified|common practice)\)/);
  });

  test("every line is marked as draft, under a banner, with cautions and versions", async () => {
    const bedside = await place.visit();
    await firstDose(bedside, 136, 190);
    const text = readable(await bedside.page.locator("body").innerText());
    expect(text).toMatch(/^Draft formulary, not signed\./);
    for (const words of [
      "Weigh the child as soon as you can.",
      "Check every dose independently.",
      "Local guidelines",
    ]) {
      expect(text).toContain(words);
    }
    const { versions } = expected(136, 190);
    expect(text).toContain(
      `body model ${versions.model}, formulary ${versions.formulary} (draft, not signed)`,
    );
    expect(await bedside.page.locator(".dose-line__draft").count()).toBe(await bedside.lines.count());
  });

  test("a slip on New child costs nothing", async () => {
    const bedside = await place.visit();
    await firstDose(bedside, 136, 190);
    const before = await bedside.total();
    await bedside.page.getByRole("button", { name: "New child" }).click();
    expect(await bedside.length.inputValue()).toBe("");
    await bedside.page.getByRole("button", { name: "Bring back the last child" }).click();
    expect(await bedside.total()).toBe(before);
  });

  test("what is typed before the script has come is kept", async () => {
    const bedside = await place.visit();
    let release = (): void => undefined;
    const held = new Promise<void>((resolve) => {
      release = resolve;
    });
    const page = await bedside.page.context().newPage();
    await page.route("**/assets/*.js", async (route) => {
      await held;
      await route.continue();
    });
    await page.goto(place.url, { waitUntil: "commit" });
    await page.getByRole("textbox", { name: "Length", exact: true }).fill("136");
    release();
    await page.locator(".dose-line").first().waitFor();
    expect(await page.getByRole("textbox", { name: "Length", exact: true }).inputValue()).toBe("136");
  });
});
