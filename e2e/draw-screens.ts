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

const openLine =
  (id: string) =>
  async ({ page }: Bedside): Promise<void> => {
    await page.locator(`[data-line="${id}"] summary`).click();
  };

/** A child held half sitting, with a waist, and a carer's word that does not fit. */
async function sayMore({ page }: Bedside): Promise<void> {
  await page.getByRole("button", { name: "Add waist" }).click();
  await page.getByRole("button", { name: "Add more" }).click();
  await page.getByRole("button", { name: "Add weight, carer’s word" }).click();
  await page.getByRole("textbox", { name: "Waist" }).fill("59");
  await page.getByRole("textbox", { name: "Weight, carer’s word" }).fill("41");
  await page.getByLabel("Child", { exact: true }).selectOption("half sitting");
  await page.getByLabel("Measured by").selectOption("two people");
  await page.getByText("does not fit the other measurements").waitFor();
  await page.getByRole("heading", { level: 1 }).click();
}

async function search({ page }: Bedside): Promise<void> {
  await page.getByLabel("Find a medicine, use or equipment").fill("ketamine");
}

interface Screen {
  readonly name: string;
  readonly viewport: { readonly width: number; readonly height: number };
  readonly arrange?: (bedside: Bedside) => Promise<void>;
  readonly scrollsPx?: number;
}

const screens: readonly Screen[] = [
  { name: "bedside-phone", viewport: sizes.phone },
  {
    name: "bedside-phone-working",
    viewport: sizes.phone,
    arrange: openLine("adrenaline.arrest"),
    scrollsPx: 560,
  },
  { name: "bedside-phone-fields", viewport: sizes.phone, arrange: sayMore, scrollsPx: 420 },
  { name: "bedside-phone-search", viewport: sizes.phone, arrange: search, scrollsPx: 420 },
  { name: "bedside-desk", viewport: sizes.desk, arrange: openLine("adrenaline.arrest") },
];

mkdirSync(folder, { recursive: true });
const place = await openPlace();
for (const { name, viewport, arrange, scrollsPx = 0 } of screens) {
  for (const colorScheme of ["light", "dark"] as const) {
    const bedside = await place.visit({ viewport, colorScheme, reducedMotion: "reduce" });
    await fill(bedside);
    await arrange?.(bedside);
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
