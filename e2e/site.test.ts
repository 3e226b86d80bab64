import { createHash } from "node:crypto";
import {
  calibrateSite,
  defaultBodyModel,
  estimateWeight,
  readSiteProfile,
  type StoredSiteProfile,
  writeSiteProfile,
} from "@steelyard/core/body";
import { computeChild } from "@steelyard/core/child";
import type { Formulary } from "@steelyard/core/dosing";
import { centimetres, formatNumber, millimetres, writtenKg } from "@steelyard/core/units";
import { draftFormulary } from "@steelyard/formulary";
import { signFormulary, writeFormulary } from "@steelyard/formulary/ownership";
import { readCaseFile } from "@steelyard/records/case";
import { afterAll, beforeAll, expect, test } from "vitest";
import { openPlace, type Place, readable, sizes } from "./support/bedside.ts";
import { caseLog, downloaded } from "./support/case.ts";
import { expectAccessible } from "./support/expect-accessible.ts";

let place: Place;
beforeAll(async () => {
  place = await openPlace();
});
afterAll(() => place.close());

/** A district of our own invention whose children are a tenth lighter than the model expects. */
function inventedProfile(): Readonly<Record<string, unknown>> {
  const rows = Array.from({ length: 120 }, (_, i) => {
    const measurements = { lengthCm: centimetres(70 + i / 2), armMm: millimetres(140 + (i % 40)) };
    const weight = estimateWeight(measurements);
    if (!weight.ok) throw new Error("no weight");
    return { measurements, weightKg: weight.value.totalKg * (0.88 + (i % 5) / 100) };
  });
  const calibration = calibrateSite(rows);
  if (!calibration.ok) throw new Error(calibration.error.type);
  return writeSiteProfile(calibration.value, {
    identity: {
      name: "Invented district",
      createdOn: "2026-11-20",
      rowsSha256: "a".repeat(64),
      signed: false,
    },
    leftOut: [],
    software: "a test",
  });
}

const profile = inventedProfile();
const renamed = { ...profile, site: "Another district" };
const fileOf = (content: unknown) => ({
  name: "site.json",
  mimeType: "application/json",
  buffer: Buffer.from(typeof content === "string" ? content : JSON.stringify(content)),
});

function expected(site: StoredSiteProfile | undefined): string {
  const child = computeChild({
    measurements: { lengthCm: centimetres(107), armMm: millimetres(171) },
    formulary: draftFormulary,
    ...(site && { site }),
  });
  if (!child.ok) throw new Error(child.error.type);
  return `${formatNumber(writtenKg(child.value.weight.totalKg))} kg`;
}

test("a calibration is taken, moves every weight, stands in the versions and the case, outlives the page and is taken off", async () => {
  const read = readSiteProfile(profile);
  if (!read.ok) throw new Error(read.error.type);
  const bedside = await place.visit({ viewport: sizes.phone, timezoneId: "UTC" });
  const { page, total, complaints } = bedside;
  const log = caseLog(bedside);
  const footer = async (): Promise<string> => readable(await page.locator(".cautions").innerText());
  await log.measure("107", "171");
  await expect.poll(total).toBe(expected(undefined));
  expect(await footer()).toContain("not calibrated for this site");

  await page.goto(`${place.url}#/site`);
  const choose = page.getByLabel(/^Calibration/);
  await choose.setInputFiles(fileOf("no"));
  await page.getByText("site.json is not a site profile").waitFor();
  await choose.setInputFiles(fileOf({ ...profile, model: "0" }));
  await page.getByText("made for body model 0").waitFor();
  await choose.setInputFiles(fileOf({ ...profile, population: {} }));
  await page.getByText("population.shift is missing.").waitFor();
  await choose.setInputFiles(fileOf(profile));
  await page.getByText("The calibration to Invented district is used from the next child on").waitFor();
  await page.getByText("Nobody has signed this calibration.").waitFor();

  // Never in the middle of a case.
  await page.goto(`${place.url}#/`);
  await expect.poll(footer).toContain("Another formulary or calibration of the site is ready");
  expect(await total()).toBe(expected(undefined));
  await page.getByRole("button", { name: "New child" }).click();
  await log.measure("107", "171");
  await expect.poll(total).toBe(expected(read.value));
  expect(expected(read.value)).not.toBe(expected(undefined));
  const said = "calibrated to Invented district on 2026-11-20 (not signed)";
  expect(await footer()).toContain(said);
  await log.give("adrenaline.arrest");
  await log.openLog();
  const { text } = await downloaded(page, "JSON");
  const file = readCaseFile(text);
  const calibrations = file.ok ? file.value.events.map(({ versions }) => versions.calibration) : [];
  expect(new Set(calibrations)).toEqual(new Set(["Invented district, 2026-11-20"]));

  await page.reload();
  await expect.poll(total).toBe(expected(read.value));
  await page.goto(`${place.url}#/site`);
  await page.getByRole("button", { name: "Take off Invented district" }).click();
  await page.getByText("Taken off. From the next child on").waitFor();
  // Another one of its own, while none waits: it is the next child's, and is not dropped with what waited.
  await choose.setInputFiles(fileOf(renamed));
  await page.getByText("The calibration to Another district is used from the next child on").waitFor();
  await page.goto(`${place.url}#/`);
  await expect.poll(footer).toContain(said);
  await page.getByRole("button", { name: "New child" }).click();
  await log.measure("107", "171");
  await expect.poll(footer).toContain("calibrated to Another district");
  await page.reload();
  await expect.poll(footer).toContain("calibrated to Another district");

  await page.goto(`${place.url}#/site`);
  await page.getByRole("button", { name: "Take off Another district" }).click();
  await page.getByText("Taken off. From the next child on").waitFor();
  await page.goto(`${place.url}#/`);
  await page.getByRole("button", { name: "New child" }).click();
  await log.measure("107", "171");
  await expect.poll(total).toBe(expected(undefined));
  expect(complaints).toEqual([]);
});

/** Adrenaline a tenth lower and later, and no amiodarone: a site of our own invention. */
const ours: Formulary = {
  ...draftFormulary,
  version: "ours 1",
  title: "Formulary of the invented district",
  medicines: draftFormulary.medicines
    .filter(({ id }) => id !== "amiodarone")
    .map((medicine) => ({
      ...medicine,
      uses: medicine.uses.map((use) =>
        medicine.id === "adrenaline" && use.id === "arrest"
          ? {
              ...use,
              ...(use.repeat && { repeat: { ...use.repeat, intervalMin: { low: 4, high: 6 } } }),
              options: use.options.map((option) =>
                option.rule.kind === "per-kg"
                  ? { ...option, rule: { ...option.rule, amountPerKg: 9 } }
                  : option,
              ),
            }
          : use,
      ),
    })),
};
const sha256 = (text: string): string => createHash("sha256").update(text).digest("hex");

function adrenaline(formulary: Formulary): string {
  const child = computeChild({
    measurements: { lengthCm: centimetres(107), armMm: millimetres(171) },
    formulary,
  });
  const line = child.ok ? child.value.sheet.find(({ id }) => id === "adrenaline.arrest") : undefined;
  if (line === undefined || line.unavailable !== undefined) throw new Error("no dose");
  return `${formatNumber(line.volume?.ml ?? 0)} mL`;
}

test("a formulary of the site is taken for the next child, works offline, and never mixes in silence with the draft", async () => {
  const signed = await signFormulary({
    formulary: ours,
    name: "A. Example",
    role: "pharmacist",
    date: "2026-11-20",
    sha256,
  });
  const fingerprint = signed.signOff?.fingerprint.slice(0, 12) ?? "none";
  const [before, after] = [adrenaline(draftFormulary), adrenaline(signed)];
  expect(after).not.toBe(before);
  const bedside = await place.visit({ viewport: sizes.phone, timezoneId: "UTC" });
  const { page, draw, complaints } = bedside;
  const log = caseLog(bedside);
  const footer = async (): Promise<string> => readable(await page.locator(".cautions").innerText());
  const drawn = (): Promise<string> => draw("adrenaline.arrest");
  const toScreen = async (address: string): Promise<unknown> => page.goto(`${place.url}#/${address}`);
  await bedside.readyOffline();
  await log.measure("107", "171");
  await expect.poll(drawn).toBe(before);
  await log.give("adrenaline.arrest");
  await page.locator('details[data-line="amiodarone.arrest"] summary').click();
  await page
    .locator('details[data-line="amiodarone.arrest"]')
    .getByRole("button", { name: "Keep in the short list" })
    .click();
  await page
    .locator('details[data-line="amiodarone.arrest"]')
    .getByRole("button", { name: /^Mark .* given$/ })
    .last()
    .click();

  await toScreen("site");
  const choose = page.getByLabel(/^Formulary file/);
  const refuses = async (content: unknown, word: string): Promise<void> => {
    await choose.setInputFiles(fileOf(content));
    await page.getByRole("alert").filter({ hasText: word }).waitFor();
  };
  await refuses("{", "is not JSON");
  await refuses({ ...ours, version: 1 }, "version: must be text");
  await refuses({ ...signed, title: "Another" }, "It was edited after A. Example signed it");
  await refuses({ ...ours, signed: true }, "does not say by whom");
  await page.getByText("In use: the draft that comes with the page").waitFor();
  await choose.setInputFiles(fileOf(writeFormulary(signed)));
  await page.getByText("Kept. ours 1 is used from the next child on").waitFor();
  await page.getByText("A. Example, pharmacist, on 2026-11-20").waitFor();
  await page.getByText("Compare with the draft").click();
  await page.getByText("adrenaline, use arrest, option by-weight: dose").waitFor();
  await page.getByText("formulary: amiodarone is gone").waitFor();
  await expectAccessible(page);

  // The case on the screen goes on as it began, after a reload too.
  await toScreen("");
  await page.reload();
  await expect.poll(drawn).toBe(before);
  await expect.poll(footer).toContain("Another formulary or calibration of the site is ready");
  await page.getByText("Draft formulary, not signed.").waitFor();

  await page.getByRole("button", { name: "New child" }).click();
  await log.measure("107", "171");
  await expect.poll(drawn).toBe(after);
  await expect.poll(() => page.getByText("Draft formulary, not signed.").count()).toBe(0);
  expect(await footer()).toContain(
    `formulary ours 1 (signed by A. Example, pharmacist, on 2026-11-20; fingerprint ${fingerprint})`,
  );
  await page.getByText(/In your short list, and not in the formulary in use: amiodarone/).waitFor();
  await page.getByRole("searchbox").fill("amiodarone");
  await expect.poll(() => page.locator('[data-line^="amiodarone"]').count()).toBe(0);

  await toScreen("paper");
  await page.getByRole("button", { name: "Take off ours 1" }).waitFor();
  await toScreen("");

  // Without a network, and from a cold start.
  await page.context().setOffline(true);
  await page.reload();
  await expect.poll(drawn).toBe(after);
  await log.give("adrenaline.arrest");
  await log.openLog();
  const { text } = await downloaded(page, "JSON");
  const file = readCaseFile(text);
  const versions = file.ok ? file.value.events.map((event) => event.versions) : [];
  expect(new Set(versions.map(({ formulary }) => formulary))).toEqual(new Set([`ours 1, ${fingerprint}`]));
  expect(versions.every(({ formularySigned }) => formularySigned)).toBe(true);
  await page.context().setOffline(false);

  await toScreen("site");
  await page.getByRole("button", { name: "Take off ours 1" }).click();
  await page.getByText("Taken off. From the next child on").waitFor();
  await toScreen("");
  await expect.poll(drawn).toBe(after);
  await page.getByRole("button", { name: "New child" }).click();
  await page.getByText("Draft formulary, not signed.").waitFor();
  // The child brought back has its own again, but for a reload in the middle of its case, and then the log says so.
  await page.getByRole("button", { name: "Bring back the last child" }).click();
  await expect.poll(drawn).toBe(after);
  await page.reload();
  await expect.poll(drawn).toBe(before);
  await log.openLog();
  await page.getByText(`1 dose was marked by the formulary ours 1, ${fingerprint}.`).waitFor();
  expect(complaints.filter((said) => !said.includes("ERR_INTERNET_DISCONNECTED"))).toEqual([]);
});

test("a formulary that the browser has lost is left for the draft, and its alert with it", async () => {
  const { page } = await place.visit();
  await page.evaluate(() => localStorage.setItem("steelyard.formulary", "ours 1"));
  await page.goto(`${place.url}#/site`);
  await page.reload();
  const alert = page.getByRole("alert").filter({ hasText: "ours 1" });
  await alert.waitFor();
  await page.getByRole("button", { name: "Use the draft that comes with the page" }).click();
  await page.getByText("Taken off. Doses follow the draft").waitFor();
  await expect.poll(() => alert.count()).toBe(0);
  await expect.poll(() => page.evaluate(() => localStorage.getItem("steelyard.formulary"))).toBe(null);
  await page.reload();
  await page.getByText("In use: the draft that comes with the page").waitFor();
  expect(await alert.count()).toBe(0);
});

test("axe finds nothing on the screen of the site in light and dark", async () => {
  const { page } = await place.visit({ viewport: { width: 320, height: 640 } });
  await page.goto(`${place.url}#/site`);
  await page.getByLabel(/^Calibration/).setInputFiles(fileOf(profile));
  await page.getByText("Fingerprint of the rows").waitFor();
  await expectAccessible(page);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
});

test("a kept calibration of another body model is not used, and the page says so", async () => {
  const { page, length, arm, total } = await place.visit();
  const stale = {
    identity: { name: "Invented district" },
    modelVersion: `${defaultBodyModel().version}-old`,
  };
  await page.evaluate((kept) => localStorage.setItem("steelyard.site", kept), JSON.stringify(stale));
  await page.reload();
  await page
    .getByRole("alert")
    .filter({ hasText: "The calibration to Invented district was made" })
    .waitFor();
  await length.fill("107");
  await arm.fill("171");
  await expect.poll(total).toBe(expected(undefined));
});
