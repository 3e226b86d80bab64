import {
  calibrateSite,
  defaultBodyModel,
  estimateWeight,
  readSiteProfile,
  type StoredSiteProfile,
  writeSiteProfile,
} from "@steelyard/core/body";
import { computeChild } from "@steelyard/core/child";
import { centimetres, formatNumber, millimetres, writtenKg } from "@steelyard/core/units";
import { draftFormulary } from "@steelyard/formulary";
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
  await page.getByText("Weights on this device now use the calibration to Invented district.").waitFor();
  await page.getByText("Nobody has signed this calibration.").waitFor();

  await page.goto(`${place.url}#/`);
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
  await page.getByText("Taken off. Weights are").waitFor();
  await page.goto(`${place.url}#/`);
  await expect.poll(total).toBe(expected(undefined));
  expect(complaints).toEqual([]);
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
