import { computeChild } from "@steelyard/core/child";
import { type DoseLine, trackGivenDoses } from "@steelyard/core/dosing";
import { centimetres, formatQuantity, kilograms, millimetres } from "@steelyard/core/units";
import { draftFormulary } from "@steelyard/formulary";
import { readCaseFile } from "@steelyard/records/case";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { openPlace, type Place, readable } from "./support/bedside.ts";
import { caseLog, downloaded } from "./support/case.ts";

let place: Place;
beforeAll(async () => {
  place = await openPlace();
});
afterAll(() => place.close());

const start = new Date("2026-11-25T03:12:00Z");

/** What the library says, computed here and not in the browser. */
function adrenaline(): DoseLine {
  const child = computeChild({
    measurements: { lengthCm: centimetres(107), armMm: millimetres(171) },
    formulary: draftFormulary,
  });
  const line = child.ok ? child.value.sheet.find(({ id }) => id === "adrenaline.arrest") : undefined;
  if (line === undefined || line.unavailable !== undefined) throw new Error("no dose");
  return line;
}

test("an arrest: four doses of adrenaline, when the next is due, totals, undo, correction and export", async () => {
  const bedside = await place.visit({ timezoneId: "UTC" });
  const { page } = bedside;
  const log = caseLog(bedside);
  /** The time of day there, in minutes since the start. */
  const at = (minutes: number): Promise<void> =>
    page.clock.setFixedTime(new Date(start.getTime() + minutes * 60_000));
  const bar = (): ReturnType<typeof expect.poll> => expect.poll(log.bar);
  await at(0);
  await page.reload();
  await log.measure("107", "171");
  expect(await log.bar()).toContain("Start the clock");

  const { dose } = adrenaline();
  const written = readable(formatQuantity(dose));
  await log.give("adrenaline.arrest");
  await bar().toMatch(/^0:00 adrenaline due in 3:00 Log/);
  await at(1 + 2 / 3);
  await bar().toMatch(/^1:40 adrenaline due in 1:20/);
  await at(3);
  await bar().toMatch(/^3:00 adrenaline due now/);

  // The second dose, late; the third too soon, and taken back; then the third and the fourth.
  await at(5.5);
  await bar().toMatch(/^5:30 adrenaline overdue by 0:30/);
  await log.openLog();
  const again = page.locator('[data-due="adrenaline.arrest"] button');
  expect(readable(await again.innerText())).toContain(`Mark ${written} given`);
  await again.click();
  await expect.poll(() => log.due("adrenaline.arrest")).toContain("2 doses");
  await expect.poll(() => log.due("adrenaline.arrest")).toContain("due in 3:00 from 8:30 to 10:30");
  await at(6.5);
  await again.click();
  await expect.poll(() => log.due("adrenaline.arrest")).toContain("before it was due");
  await page.locator(".case-bar__marked").getByRole("button", { name: "Undo" }).click();
  await expect.poll(() => log.due("adrenaline.arrest")).not.toContain("before it was due");
  await at(9);
  await again.click();
  await expect.poll(() => log.due("adrenaline.arrest")).toContain("3 doses");
  await at(12 + 1 / 3);
  await again.click();
  const given = [0, 5.5, 9, 12 + 1 / 3].map((atMinutes) => ({
    lineId: "adrenaline.arrest",
    dose,
    atMinutes,
  }));
  const weights = { totalKg: kilograms(18) };
  const [tracked] = trackGivenDoses({ formulary: draftFormulary, weights, given }).lines;
  if (tracked?.nextDue === undefined) throw new Error("no next dose");
  const total = readable(formatQuantity(tracked.total));
  await expect.poll(() => log.due("adrenaline.arrest")).toContain(`4 doses, ${total} in all`);
  const { earliestMinutes, latestMinutes } = tracked.nextDue;
  // 15:20 and 17:20 in seconds.
  expect([earliestMinutes, latestMinutes].map((minutes) => Math.round(minutes * 60))).toEqual([920, 1040]);
  await expect.poll(() => log.due("adrenaline.arrest")).toContain("due in 3:00 from 15:20 to 17:20");

  // What was drawn up was less: the correction stands in its place, the first word stays in sight.
  await page
    .getByRole("button", { name: /^Correct: adrenaline/ })
    .first()
    .click();
  await page.getByLabel("Dose in microgram").fill("100");
  await page.getByLabel("Volume in mL").fill("1");
  await page.getByRole("button", { name: "Put in place" }).click();
  await expect.poll(async () => (await log.entries())[0]).toContain("correction: adrenaline");
  await page.getByLabel("Note", { exact: true }).fill("Pulse back");
  await page.getByRole("button", { name: "Add the note" }).click();
  await expect.poll(async () => (await log.entries())[0]).toContain("Pulse back");
  const entries = await log.entries();
  expect(entries.filter((entry) => entry.includes("taken back"))).toHaveLength(2);
  expect(entries.filter((entry) => entry.includes("adrenaline"))).toHaveLength(6);

  const code = await log.code();
  const json = await downloaded(page, "JSON");
  expect(json.name).toBe(`case-${code}.json`);
  const file = readCaseFile(json.text);
  const doses = file.ok ? file.value.events.filter(({ type }) => type === "dose-given") : [];
  expect(doses.map(({ at }) => at.slice(11, 19))).toEqual([
    "03:12:00",
    "03:17:30",
    "03:18:30",
    "03:21:00",
    "03:24:20",
    "03:24:20",
  ]);
  const fhir = JSON.parse((await downloaded(page, "FHIR R4")).text);
  const kinds = fhir.entry.map(
    ({ resource }: { resource: { resourceType: string; status: string } }) =>
      `${resource.resourceType} ${resource.status}`,
  );
  expect(kinds.filter((kind: string) => kind === "MedicationAdministration completed")).toHaveLength(4);
  expect(kinds.filter((kind: string) => kind === "MedicationAdministration entered-in-error")).toHaveLength(
    2,
  );
  const text = readable((await downloaded(page, "Text")).text);
  expect(text).toContain(`0:05:30 adrenaline, cardiac arrest: ${written}`);
  expect(text).toContain("Weigh the child as soon as you can.");

  // The tab is killed and comes back: the clock runs on as if nothing had been.
  await page.reload();
  await page.locator(".case-bar__clock").waitFor();
  await at(14);
  await bar().toMatch(/^14:00 adrenaline due in 1:20/);
  await log.openLog();
  await expect.poll(() => log.entries()).toEqual(entries);
  expect(bedside.complaints).toEqual([]);
});

test("a new child has a case of its own, and the child brought back has its own again", async () => {
  const bedside = await place.visit();
  const log = caseLog(bedside);
  await log.measure("107", "171");
  await log.give("adrenaline.arrest");
  await log.openLog();
  const first = await log.code();
  await bedside.page.keyboard.press("Escape");
  await bedside.page.getByRole("button", { name: "New child" }).click();
  await log.measure("92", "150");
  expect(await log.bar()).toContain("Start the clock");
  await bedside.page.getByRole("button", { name: /^Start the clock/ }).click();
  await log.openLog();
  await expect.poll(() => log.code()).not.toBe(first);
  expect(await bedside.page.locator("[data-due]").count()).toBe(0);
});

describe("where nothing can be kept", () => {
  test("storage is refused: a clear word, the work goes on, the export holds everything", async () => {
    const bedside = await place.visit();
    const { page } = bedside;
    await page.addInitScript(() => {
      IDBFactory.prototype.open = () => {
        throw new DOMException("denied", "SecurityError");
      };
    });
    await page.reload();
    const log = caseLog(bedside);
    await log.measure("107", "171");
    await log.give("adrenaline.arrest");
    await expect.poll(() => page.getByRole("alert").filter({ hasText: "keeps nothing" }).count()).toBe(1);
    await log.openLog();
    expect((await downloaded(page, "JSON")).text).toContain("adrenaline.arrest");
    expect(bedside.complaints).toEqual([]);
  });

  test("the device is full: a clear word, and what was marked is written once there is room", async () => {
    const bedside = await place.visit();
    const { page } = bedside;
    const log = caseLog(bedside);
    await log.measure("107", "171");
    await log.give("adrenaline.arrest");
    await page.evaluate(() => {
      const put = IDBObjectStore.prototype.put;
      Object.assign(window, { freeSpace: () => Object.assign(IDBObjectStore.prototype, { put }) });
      IDBObjectStore.prototype.put = () => {
        throw new DOMException("full", "QuotaExceededError");
      };
    });
    await log.openLog();
    await page.getByLabel("Note", { exact: true }).fill("lines in");
    await page.getByRole("button", { name: "Add the note" }).click();
    await page.getByText("The device is full").waitFor();
    await expect.poll(() => log.entries()).toHaveLength(5);
    await page.evaluate(() => (window as unknown as { freeSpace: () => void }).freeSpace());
    await page.getByRole("button", { name: "Try again" }).click();
    await page.getByText("The device is full").waitFor({ state: "detached" });
    await page.reload();
    await log.openLog();
    await expect.poll(() => log.entries()).toHaveLength(5);
    expect((await log.entries())[0]).toContain("lines in");
  });
});

test("two tabs: each says that the other is there, and the casebook of one has the cases of both", async () => {
  const bedside = await place.visit();
  const log = caseLog(bedside);
  await log.measure("107", "171");
  await log.give("adrenaline.arrest");
  const other = await bedside.page.context().newPage();
  await other.goto(`${place.url}/#/casebook`);
  await other.locator(".case-list a").waitFor();
  await other.getByText("open in another tab").waitFor();
  await log.openLog();
  await bedside.page.getByText("open in another tab").waitFor();
  await bedside.page.getByLabel("Note", { exact: true }).fill("from the first tab");
  await bedside.page.getByRole("button", { name: "Add the note" }).click();
  await other.locator(".case-list a").click();
  await other.getByText("from the first tab").waitFor();
  await other.getByLabel("Weight, scale").fill("17.9");
  await other.getByRole("button", { name: "Keep the weight" }).click();
  await expect.poll(async () => (await log.entries())[0]).toContain("Weighed later: 17.9 kg");
  await other.close();
  await bedside.page.getByText("open in another tab").waitFor({ state: "detached" });
  expect(bedside.complaints).toEqual([]);
});
