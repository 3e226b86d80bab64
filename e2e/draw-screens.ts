// Takes the pictures of docs/screens from the built page: npm run screens, or of some: npm run screens -- paper study
import { createHash } from "node:crypto";
import { mkdirSync, statSync } from "node:fs";
import { join } from "node:path";
import { draftFormulary } from "@steelyard/formulary";
import { signFormulary, writeFormulary } from "@steelyard/formulary/ownership";
import type { Page } from "playwright-core";
import { type Bedside, openPlace, sizes } from "./support/bedside.ts";
import { caseLog, goTo } from "./support/case.ts";
import { drawDepartment } from "./support/draw-department.ts";

const folder = join(import.meta.dirname, "../docs/screens");
const largestKb = 300;

/** A child of our own invention: 136 cm, arm 190 mm. */
async function fill({ page, lines }: Bedside): Promise<void> {
  // By id: the names are those of the language.
  await page.locator("#lengthCm").fill("136");
  await page.locator("#armMm").fill("190");
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

/** How to measure, and a second reading that differs. */
async function showHow({ page }: Bedside): Promise<void> {
  await page.getByRole("button", { name: "How to measure: Arm, mid-upper", exact: true }).click();
  await page.getByRole("region", { name: "How to measure: Arm, mid-upper" }).waitFor();
}

async function openReader({ page }: Bedside): Promise<void> {
  await page.getByRole("link", { name: "Second reader" }).first().click();
  await page.getByRole("button", { name: "Hand over" }).waitFor();
}

async function compareReadings(bedside: Bedside): Promise<void> {
  const { page } = bedside;
  await openReader(bedside);
  await page.getByRole("button", { name: "Hand over" }).click();
  await page.getByRole("textbox", { name: "Length, second reading" }).fill("136.8");
  await page.getByRole("textbox", { name: "Arm, second reading" }).fill("202");
  await page.getByRole("button", { name: "Done" }).click();
  await page.getByRole("heading", { name: "Agreement" }).waitFor();
}

async function useKeys({ page, arm }: Bedside): Promise<void> {
  await arm.tap();
  await page.getByRole("toolbar").waitFor();
}

/** The clock runs, and two doses have been given. */
async function giveDoses(bedside: Bedside): Promise<void> {
  const log = caseLog(bedside);
  await log.give("adrenaline.arrest");
  await log.give("amiodarone.arrest");
}

async function openLog(bedside: Bedside): Promise<void> {
  await giveDoses(bedside);
  await caseLog(bedside).openLog();
}

/** Two cases, one of them weighed later. */
async function openCasebook(bedside: Bedside): Promise<void> {
  const { page } = bedside;
  const log = caseLog(bedside);
  await giveDoses(bedside);
  await page.getByRole("button", { name: "New child" }).click();
  await log.measure("84", "152");
  await log.give("adrenaline.arrest");
  await goTo(page, "Casebook");
  await page.locator(".case-list a").last().click();
  await page.getByLabel("Weight, scale").fill("28.1");
  await page.getByLabel("Weight, scale").press("Enter");
  await page.getByText("Weighed later").waitFor();
  await page.getByRole("link", { name: "All cases" }).click();
  await page.locator(".case-list a").first().waitFor();
}

async function openCase(bedside: Bedside): Promise<void> {
  await openCasebook(bedside);
  await bedside.page.locator(".case-list a").last().click();
  await bedside.page.getByText("Weighed later").waitFor();
}

async function practise({ page }: Bedside): Promise<void> {
  await goTo(page, "Practice");
  await page.getByRole("button", { name: "Start with the first child" }).click();
  await page.locator(".practice svg").first().waitFor();
}

async function judge({ page }: Bedside): Promise<void> {
  await goTo(page, "Study");
  await page.getByRole("button", { name: "Try 400 invented children" }).click();
  await page.getByRole("article").waitFor();
}

async function drawPaper({ page }: Bedside): Promise<void> {
  await goTo(page, "Paper");
  await page.locator(".preview svg, .paper svg").first().waitFor();
}

async function openSite({ page }: Bedside): Promise<void> {
  await goTo(page, "This site");
  await page.getByLabel(/^Calibration/).waitFor();
}

/** A formulary of our own invention, signed by two people who do not exist. */
async function takeFormulary({ page }: Bedside): Promise<void> {
  const formulary = await signFormulary({
    formulary: { ...draftFormulary, version: "ours 1", title: "Formulary of an invented hospital" },
    name: "A. Example",
    role: "pharmacist",
    date: "2026-11-20",
    second: { name: "B. Sample", role: "physician", date: "2026-11-21" },
    sha256: (text) => createHash("sha256").update(text).digest("hex"),
  });
  await goTo(page, "This site");
  const buffer = Buffer.from(writeFormulary(formulary));
  await page
    .getByLabel(/^Formulary file/)
    .setInputFiles({ name: "ours.json", mimeType: "application/json", buffer });
  await page.getByText("A. Example, pharmacist").waitFor();
}

interface Screen {
  readonly name: string;
  readonly viewport: { readonly width: number; readonly height: number };
  readonly touch?: true;
  readonly arrange?: (bedside: Bedside) => Promise<void>;
  readonly scrollsPx?: number;
  /** The language of the browser; English where absent. */
  readonly locale?: string;
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
  { name: "bedside-phone-keys", viewport: sizes.phone, touch: true, arrange: useKeys },
  { name: "bedside-phone-how", viewport: sizes.phone, arrange: showHow, scrollsPx: 250 },
  { name: "bedside-phone-sheet", viewport: sizes.phone, scrollsPx: 640 },
  { name: "second-reader-phone", viewport: sizes.phone, arrange: openReader },
  { name: "second-reader-phone-agreement", viewport: sizes.phone, arrange: compareReadings },
  { name: "clock-phone", viewport: sizes.phone, arrange: giveDoses, scrollsPx: 560 },
  { name: "clock-phone-log", viewport: sizes.phone, arrange: openLog },
  { name: "clock-desk-log", viewport: sizes.desk, arrange: openLog },
  { name: "casebook-phone", viewport: sizes.phone, arrange: openCasebook },
  { name: "casebook-phone-case", viewport: sizes.phone, arrange: openCase },
  { name: "casebook-desk", viewport: sizes.desk, arrange: openCasebook },
  { name: "practice-phone", viewport: sizes.phone, arrange: practise },
  { name: "practice-desk", viewport: sizes.desk, arrange: practise },
  { name: "study-phone", viewport: sizes.phone, arrange: judge },
  { name: "study-desk", viewport: sizes.desk, arrange: judge },
  { name: "paper-phone", viewport: sizes.phone, arrange: drawPaper },
  { name: "paper-desk", viewport: sizes.desk, arrange: drawPaper },
  { name: "site-phone", viewport: sizes.phone, arrange: openSite },
  { name: "site-desk-formulary", viewport: sizes.desk, arrange: takeFormulary },
  { name: "bedside-tablet", viewport: sizes.tablet },
  { name: "bedside-desk", viewport: sizes.desk, arrange: openLine("adrenaline.arrest") },
  { name: "bedside-phone-french", viewport: sizes.phone, locale: "fr-FR" },
  {
    name: "bedside-desk-french",
    viewport: sizes.desk,
    arrange: openLine("adrenaline.arrest"),
    locale: "fr-FR",
  },
];

/** Keeps what the page shows, where it is small enough for the documents. */
async function keep(page: Page, name: string): Promise<void> {
  const path = join(folder, `${name}.png`);
  await page.screenshot({ path });
  const kb = Math.round(statSync(path).size / 1000);
  if (kb > largestKb) throw new Error(`${path} has ${kb} kB, more than ${largestKb} kB`);
  console.log(`${path} ${kb} kB`);
}

mkdirSync(folder, { recursive: true });
const place = await openPlace();
const wanted = process.argv.slice(2);
const isWanted = (name: string): boolean => wanted.length === 0 || wanted.some((part) => name.includes(part));
const chosen = screens.filter(({ name }) => isWanted(name));
for (const { name, viewport, touch, arrange, scrollsPx = 0, locale } of chosen) {
  for (const colorScheme of ["light", "dark"] as const) {
    const bedside = await place.visit({
      viewport,
      colorScheme,
      reducedMotion: "reduce",
      ...(touch && { hasTouch: true, isMobile: true }),
      ...(locale && { locale }),
    });
    if (locale !== undefined) await bedside.page.locator(".language-note").waitFor();
    await fill(bedside);
    await arrange?.(bedside);
    await bedside.page.mouse.move(0, 0);
    await bedside.page.evaluate((top) => scrollTo(0, top), scrollsPx);
    await bedside.page.waitForTimeout(200);
    await keep(bedside.page, `${name}${colorScheme === "dark" ? "-dark" : ""}`);
    await bedside.page.context().close();
  }
}
await place.close();
await drawDepartment(isWanted, keep);
