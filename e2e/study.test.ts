import { readFileSync } from "node:fs";
import { unzipSync } from "fflate";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type Bedside, openPlace, type Place, readable, sizes } from "./support/bedside.ts";
import { expectAccessible } from "./support/expect-accessible.ts";

let place: Place;
beforeAll(async () => {
  place = await openPlace();
});
afterAll(() => place.close());

async function openStudy(options: Parameters<Place["visit"]>[0] = {}): Promise<Bedside> {
  const bedside = await place.visit({ viewport: sizes.desk, acceptDownloads: true, ...options });
  await bedside.page.goto(`${place.url}#/study`);
  await bedside.page.getByLabel("A file of children").waitFor();
  return bedside;
}

const report = ({ page }: Bedside) => page.getByRole("article");
const fileOf = (name: string, text: string) => ({ name, mimeType: "text/plain", buffer: Buffer.from(text) });

test("from the example to flow, figures and tables, the report and the calibration", async () => {
  const bedside = await openStudy();
  const { page, complaints } = bedside;
  const asked: string[] = [];
  page.on("request", (request) => asked.push(`${request.method()} ${new URL(request.url()).origin}`));
  await page.getByRole("button", { name: "Try 400 invented children" }).click();
  await report(bedside).waitFor();
  const text = readable((await report(bedside).textContent()) ?? "");
  expect(text).toContain("These children are invented.");
  expect(text).toContain("Rows read: 400");
  expect(await report(bedside).locator("svg").count()).toBeGreaterThan(6);
  await page.getByRole("region", { name: "Accuracy of each method on the children it serves" }).waitFor();

  let coming = page.waitForEvent("download");
  await page.getByRole("button", { name: "Download the report" }).click();
  const zip = unzipSync(readFileSync((await (await coming).path()) ?? ""));
  expect(Object.keys(zip)).toEqual(
    expect.arrayContaining(["report.html", "report.pdf", "accuracy.csv", "flow.svg", "flow.png"]),
  );

  coming = page.waitForEvent("download");
  await page.getByLabel("Name of the site, for the calibration").fill("Invented district");
  await page.getByRole("button", { name: "Download the calibration" }).click();
  const profile = JSON.parse(readFileSync((await (await coming).path()) ?? "", "utf8"));
  expect([profile.format, profile.site]).toEqual(["steelyard-site-profile", "Invented district"]);
  // Nothing left the device: only files of the page itself were asked for.
  expect(new Set(asked)).toEqual(new Set([`GET ${new URL(place.url).origin}`]));
  expect(complaints).toEqual([]);
});

test("a column is told what it is, a method is added, and all is judged again", async () => {
  const bedside = await openStudy();
  const { page } = bedside;
  const rows = Array.from({ length: 40 }, (_, i) => `${80 + i},${140 + i},${10 + i / 4},${24 + i}`);
  await page
    .getByLabel("A file of children")
    .setInputFiles(fileOf("ward.csv", `q1,q2,q3,age_months\n${rows.join("\n")}`));
  await page.getByRole("alert").filter({ hasText: "taken by their looks" }).waitFor();
  await page.locator("summary", { hasText: "Columns and units" }).click();
  await page.getByLabel("q2: Taken for").selectOption("arm");
  await page.getByLabel("q2: Unit").selectOption("mm");
  await page.locator("summary", { hasText: "Methods" }).click();
  await page.getByLabel("Body model: age", { exact: true }).check();
  await page.locator("summary", { hasText: "Comparison, chance and doses" }).click();
  await page.getByLabel("May be worse by").fill("5");
  await page.getByLabel("Seed of all").fill("7");
  await page.getByLabel("What errors mean for doses").check();
  await page.getByRole("button", { name: "Judge again" }).click();
  await expect
    .poll(async () => readable((await report(bedside).textContent()) ?? ""))
    .toContain("Body model: age: 40");
  expect(await page.getByRole("alert").count()).toBe(0);
  const text = readable((await report(bedside).textContent()) ?? "");
  for (const part of ["Margin 5 points", "with seed 7", "What the errors would have meant for doses"])
    expect(text).toContain(part);
  const coming = page.waitForEvent("download");
  await page.getByRole("button", { name: /^Save as PNG: Estimates within/ }).click();
  const picture = readFileSync((await (await coming).path()) ?? "");
  expect([picture.subarray(1, 4).toString("latin1"), picture.readUInt32BE(16)]).toEqual(["PNG", 2000]);
});

test.each([
  ["a header and no row", "length_cm,weight_kg\n", "no row under it"],
  ["another mark between cells", "length_cm^weight_kg\n90^12\n", "must be a comma, semicolon, tab or bar"],
  ["no scale weight", "length_cm,arm_mm\n90,150\n", "No column is taken for the scale weight"],
])("says what is wrong with %s", async (_name, text, sentence) => {
  const { page } = await openStudy();
  await page.getByLabel("A file of children").setInputFiles(fileOf("bad.csv", text));
  expect(readable((await page.getByRole("alert").textContent()) ?? "")).toContain(sentence);
});

test("cancelling ends the work and the next file is judged", async () => {
  const bedside = await openStudy();
  const { page } = bedside;
  const rows = Array.from(
    { length: 60_000 },
    (_, i) => `${50 + (i % 120)},${120 + (i % 120)},${(4 + (i % 120) / 2).toFixed(1)}`,
  );
  await page
    .getByLabel("A file of children")
    .setInputFiles(fileOf("long.csv", `length_cm,arm_mm,weight_kg\n${rows.join("\n")}`));
  await page.getByRole("button", { name: "Cancel" }).click();
  await page.getByText("Cancelled. Nothing was computed.").waitFor();
  await page.getByRole("button", { name: "Try 400 invented children" }).click();
  await report(bedside).waitFor();
});

const few = `site,length_cm,arm_mm,weight_kg\n${Array.from({ length: 60 }, (_, i) => `${"ABC"[i % 3]},${80 + i},${140 + i},${10 + i / 4}`).join("\n")}`;

describe("axe finds nothing in light and dark", () => {
  test.each(Object.entries(sizes))("on a %s", async (_, viewport) => {
    const bedside = await openStudy({ viewport });
    const { page } = bedside;
    // Every kind of table and figure, of a few children: axe looks at every element, and more of a kind tell it nothing new.
    await page.getByLabel("A file of children").setInputFiles(fileOf("ward.csv", few));
    await report(bedside).waitFor();
    await page.locator("summary", { hasText: "Comparison, chance and doses" }).click();
    await page.locator("summary", { hasText: "Columns and units" }).click();
    // A figure is one picture with a name; its thousands of strokes are nothing to judge.
    await expectAccessible(page, { exclude: ".study__figure svg > g" });
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
  });
});
