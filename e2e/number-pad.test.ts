import { afterAll, beforeAll, expect, test } from "vitest";
import { openPlace, type Place, sizes } from "./support/bedside.ts";

let place: Place;
beforeAll(async () => {
  place = await openPlace();
});
afterAll(() => place.close());

const touch = { viewport: sizes.phone, hasTouch: true, isMobile: true, reducedMotion: "reduce" } as const;

test("from first touch to the first dose with the page's own keys, which never hide the field", async () => {
  const { page, length, arm, total, draw } = await place.visit(touch);
  const key = (name: string) => page.getByRole("toolbar").getByRole("button", { name, exact: true });
  await page.locator("[data-pad]").first().waitFor();
  await expect
    .poll(() => page.getByRole("button", { name: "How to measure: Length", exact: true }).count())
    .toBe(1);
  await length.tap();
  for (const sign of "136") await key(sign).tap();
  expect(await length.getAttribute("inputmode")).toBe("none");
  await key("Next").tap();
  for (const sign of "199") await key(sign).tap();
  await key("erase").tap();
  await key("0").tap();
  expect([await length.inputValue(), await arm.inputValue()]).toEqual(["136", "190"]);
  await expect.poll(total).toMatch(/^28\.\d kg$/);
  const field = await arm.boundingBox();
  const pad = await page.getByRole("toolbar").boundingBox();
  expect((field?.y ?? 0) + (field?.height ?? 0)).toBeLessThan(pad?.y ?? 0);
  await key("Done").tap();
  await page.getByRole("toolbar").waitFor({ state: "hidden" });
  expect(await draw("adrenaline.arrest")).toBe("2.8 mL");
  const dose = await page.locator('[data-line="adrenaline.arrest"] .dose-line__draw').boundingBox();
  expect(dose?.y).toBeGreaterThan(0);
  expect(dose?.y).toBeLessThan(sizes.phone.height - 100);
});

test("an age has keys for its units, and every key is large enough", async () => {
  const { page, length } = await place.visit(touch);
  await length.fill("136");
  await page.getByRole("button", { name: "Add age" }).tap();
  const pad = page.getByRole("toolbar");
  await pad.waitFor();
  for (const name of ["9", "years", "6", "months"])
    await pad.getByRole("button", { name, exact: true }).tap();
  expect(
    (await page.getByRole("textbox", { name: "Age", exact: true }).inputValue())
      .replaceAll(/\s+/g, " ")
      .trim(),
  ).toBe("9 y 6 mo");
  const sizesOfKeys = await pad
    .getByRole("button")
    .evaluateAll((keys) =>
      keys
        .map((button) => button.getBoundingClientRect())
        .map(({ width, height }) => Math.min(width, height)),
    );
  expect(Math.min(...sizesOfKeys)).toBeGreaterThanOrEqual(44);
});

test("whoever wants the device's own keyboard gets it, and keeps it", async () => {
  const { page, length } = await place.visit(touch);
  await length.tap();
  await page.getByRole("button", { name: "Use the device’s keyboard" }).tap();
  await page.getByRole("toolbar").waitFor({ state: "hidden" });
  expect(await length.getAttribute("inputmode")).toBe("decimal");
  await page.reload();
  await length.tap();
  expect(await page.getByRole("toolbar").count()).toBe(0);
});

test("with a mouse there are plain fields", async () => {
  const { page, length, lines } = await place.visit({ viewport: sizes.desk });
  await length.fill("136");
  await lines.first().waitFor();
  await length.click();
  expect(await page.getByRole("toolbar").count()).toBe(0);
});
