// Takes the pictures of docs/screens from the built page: npm run screens
import { mkdirSync, statSync } from "node:fs";
import { join } from "node:path";
import { type Bedside, openPlace, sizes } from "./support/bedside.ts";

const folder = join(import.meta.dirname, "../docs/screens");
const largestKb = 300;

/** A child of our own invention: 136 cm, arm 190 mm. */
async function fill({ page, length, arm, lines }: Bedside): Promise<void> {
  await length.fill("136");
  await arm.fill("190");
  await lines.first().waitFor();
  await page.locator("h1").click();
  await page.evaluate(() => document.fonts.ready);
}

const screens = [
  { name: "bedside-phone", viewport: sizes.phone, opens: undefined, scrollsPx: 0 },
  { name: "bedside-phone-working", viewport: sizes.phone, opens: "adrenaline.arrest", scrollsPx: 560 },
  { name: "bedside-desk", viewport: sizes.desk, opens: "adrenaline.arrest", scrollsPx: 0 },
] as const;

mkdirSync(folder, { recursive: true });
const place = await openPlace();
for (const { name, viewport, opens, scrollsPx } of screens) {
  for (const colorScheme of ["light", "dark"] as const) {
    const bedside = await place.visit({ viewport, colorScheme, reducedMotion: "reduce" });
    await fill(bedside);
    if (opens !== undefined) await bedside.page.locator(`[data-line="${opens}"] summary`).click();
    await bedside.page.mouse.move(0, 0);
    await bedside.page.evaluate((top) => scrollTo(0, top), scrollsPx);
    await bedside.page.waitForTimeout(200);
    const path = join(folder, `${name}${colorScheme === "dark" ? "-dark" : ""}.png`);
    await bedside.page.screenshot({ path });
    const kb = Math.round(statSync(path).size / 1000);
    if (kb > largestKb) throw new Error(`${path} has ${kb} kB, more than ${largestKb} kB`);
    console.log(`${path} ${kb} kB`);
    await bedside.page.context().close();
  }
}
await place.close();
