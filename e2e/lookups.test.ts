import { computeChild } from "@steelyard/core/child";
import { centimetres, millimetres } from "@steelyard/core/units";
import { describeEquipmentSize, describeSignValue } from "@steelyard/core/wording";
import { draftFormulary } from "@steelyard/formulary";
import { afterEach, beforeEach, expect, test } from "vitest";
import { type Bedside, openPlace, type Place, readable } from "./support/bedside.ts";

let place: Place;
beforeEach(async () => {
  place = await openPlace();
});
afterEach(() => place.close());

async function openGroup({ page }: Bedside, name: string, first: string): Promise<void> {
  await page.getByRole("button", { name }).click();
  await page.locator(`[data-line="${first}"]`).waitFor();
}

test("equipment and normal signs stand below the doses, with the sizes that the library gives, by keyboard and offline", async () => {
  const bedside = await place.visit({ viewport: { width: 360, height: 780 } });
  const { page, length, arm } = bedside;
  await length.fill("136");
  await arm.fill("190");
  await bedside.readyOffline();
  await place.stopServer();
  await openGroup(bedside, "Equipment", "tracheal-tube.cuffed");
  await openGroup(bedside, "Normal signs", "heart-rate");

  const measurements = { lengthCm: centimetres(136), armMm: millimetres(190) };
  const child = computeChild({ measurements, formulary: draftFormulary });
  if (!child.ok) throw new Error(`no weight: ${child.error.type}`);
  const { equipment, signs } = child.value;
  const sizes: readonly (readonly [string, string])[] = [
    ...equipment.map(
      (line) => [line.id, line.unavailable ? "None" : describeEquipmentSize(line.item, line)] as const,
    ),
    ...signs.map((line) => [line.id, line.unavailable ? "None" : describeSignValue(line)] as const),
  ];
  expect(sizes.length).toBeGreaterThan(30);
  for (const [id, size] of sizes) expect(await bedside.draw(id), id).toBe(readable(size));

  const tube = page.locator('[data-line="tracheal-tube.cuffed"]');
  await tube.locator("summary").focus();
  await page.keyboard.press("Enter");
  await tube.locator(".dose-detail").waitFor();
  expect(readable(await tube.innerText())).toContain("Length 136 cm ÷ 30 + 1.5 = 6.033 mm.");
  expect(readable(await tube.innerText())).toContain("from memory, to be verified");
  expect(await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true);
  expect(bedside.complaints).toEqual([]);
});
