import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type Bedside, openPlace, type Place, readable, sizes } from "./support/bedside.ts";
import { expectAccessible } from "./support/expect-accessible.ts";

let place: Place;

beforeAll(async () => {
  place = await openPlace();
});
afterAll(() => place.close());

async function openPaper(viewport: (typeof sizes)[keyof typeof sizes] = sizes.desk): Promise<Bedside> {
  const bedside = await place.visit({ viewport, acceptDownloads: true });
  await bedside.page.goto(`${place.url}#/paper`);
  await bedside.page.locator(".paper__sheet svg").waitFor();
  return bedside;
}

test("shows the strip page by page and makes its PDF in the browser", async () => {
  const { page, complaints } = await openPaper();
  const sheet = page.locator(".paper__sheet svg");
  expect(readable((await sheet.textContent()) ?? "")).toContain("HEAD LINE");
  await page.getByRole("button", { name: "Next page" }).click();
  await page.locator(".paper__turn", { hasText: "Page 2 of 8" }).waitFor();
  expect(readable((await sheet.textContent()) ?? "")).toContain("On the chart");
  const folder = process.env.STEELYARD_PICTURES;
  if (folder !== undefined) await page.screenshot({ path: join(folder, "paper-desk.png") });
  expect((await page.locator(".paper__sheet").boundingBox())?.width).toBeGreaterThan(400);
  // True to scale: what is shown says how large it is.
  expect(await sheet.getAttribute("viewBox")).toBe("0 0 210 297");

  const coming = page.waitForEvent("download");
  await page.getByRole("button", { name: "Download the PDF, 8 pages" }).click();
  const download = await coming;
  expect(download.suggestedFilename()).toBe("strip-a4.pdf");
  const file = readFileSync((await download.path()) ?? "");
  expect(file.subarray(0, 8).toString("latin1")).toBe("%PDF-1.7");
  expect(file.toString("latin1").match(/\/Type \/Page\b/g)).toHaveLength(8);
  await page.getByText("strip-a4.pdf was made. Print it at 100 %.").waitFor();
  expect(complaints).toEqual([]);
});

test("draws what is chosen, and says what cannot be drawn", async () => {
  const { page } = await openPaper(sizes.phone);
  // In French screen and page say that nobody has reviewed it.
  const sheet = page.locator(".paper__sheet svg");
  await page.getByRole("radio", { name: "Français" }).check();
  await page.getByText("French is machine-translated and reviewed by nobody").waitFor();
  await expect.poll(() => sheet.textContent()).toContain("Traduction automatique, non relue.");
  await page.getByText("steelyard paper strip --page a4 --language fr -o strip-a4.pdf").waitFor();
  await page.getByRole("radio", { name: "English" }).check();
  await page.getByRole("radio", { name: "Arm band" }).check();
  await page.locator(".paper__turn", { hasText: "Page 1 of 1" }).waitFor();
  // A roll is for the strip alone.
  expect(await page.getByRole("radio", { name: "a roll" }).count()).toBe(0);
  await page.getByRole("radio", { name: "Letter" }).check();
  await page.locator('.paper__sheet svg[width="215.9mm"]').waitFor();
  await page.getByRole("radio", { name: "Length strip" }).check();
  await page.getByRole("radio", { name: "a roll" }).check();
  await page.getByLabel("Width of the roll").fill("150");
  await page.getByText("150 mm is too narrow").waitFor();
  expect(await page.getByRole("button", { name: /Download/ }).count()).toBe(0);
  await page.getByLabel("Width of the roll").fill("300");
  await page.locator('.paper__sheet svg[width="300mm"]').waitFor();
  await page.getByText("steelyard paper strip --page roll --roll-width-mm 300 -o strip-roll.pdf").waitFor();
});

test("refuses a file that is no calibration, with its reason, and keeps the paper as it was", async () => {
  const { page } = await openPaper();
  const choose = page.getByLabel(/Calibration of your site/);
  await choose.setInputFiles({ name: "site.json", mimeType: "application/json", buffer: Buffer.from("{}") });
  await page.getByRole("alert").waitFor();
  await choose.setInputFiles({ name: "site.txt", mimeType: "text/plain", buffer: Buffer.from("no") });
  await page.getByText("site.txt is not a file of that kind.").waitFor();
  expect(readable(await page.locator(".paper__sheet svg").innerHTML())).toContain(
    "Not calibrated to any site",
  );
});

test("works without a network once the page has been there", async () => {
  const { page, readyOffline } = await place.visit({ viewport: sizes.desk });
  await readyOffline();
  await page.context().setOffline(true);
  await page.goto(`${place.url}#/paper`);
  await page.reload();
  await page.locator(".paper__sheet svg").waitFor();
  await page.context().setOffline(false);
});

test("the booklet tells how far it is, can be given up, and comes with the chosen problems", async () => {
  const { page } = await openPaper();
  await page.getByRole("radio", { name: "Dose booklet" }).check();
  await page.getByText(/Weight \d+ of \d+ drawn\./).waitFor();
  await page.getByRole("button", { name: "Cancel" }).click();
  await page.getByText("Cancelled.").waitFor();
  // Nothing goes on behind it.
  expect(await page.locator(".paper__sheet svg").count()).toBe(0);
  for (const problem of ["Arrest", "Seizure"]) await page.getByRole("checkbox", { name: problem }).uncheck();
  await page.getByRole("button", { name: /^Download the PDF, \d+ pages$/ }).waitFor({ timeout: 30_000 });
  const first = readable((await page.locator(".paper__sheet svg").textContent()) ?? "");
  expect(first).toContain("Find the weight");
  await page.getByRole("button", { name: "Next page" }).click();
  await expect
    .poll(async () => readable((await page.locator(".paper__sheet svg").textContent()) ?? ""))
    .toMatch(/adrenaline, anaphylaxis, IM.*\d micrograms = 0\.\d+ mL of 1 mg\/mL/);
  await page.getByRole("checkbox", { name: "Anaphylaxis" }).uncheck();
  await page.getByText("Choose a problem at least").waitFor();
});

test("the child on Bedside gets its sheet and its labels, and without a child the screen says what to do", async () => {
  const { page, length, arm } = await place.visit({ viewport: sizes.desk });
  await page.goto(`${place.url}#/paper`);
  await page.getByRole("radio", { name: "Child sheet" }).check();
  await page.getByText("There is no child on Bedside").waitFor();
  await page.goto(`${place.url}#/`);
  await length.fill("136");
  await arm.fill("190");
  await page.goto(`${place.url}#/paper`);
  await page.getByRole("radio", { name: "Child sheet" }).check();
  const sheet = async (): Promise<string> =>
    readable((await page.locator(".paper__sheet svg").textContent()) ?? "");
  await expect.poll(sheet).toContain("length 136 cm, arm circumference 190 mm");
  expect(await sheet()).toContain("28.4 kg");
  await page.getByRole("radio", { name: "Syringe labels" }).check();
  await page.getByRole("radio", { name: "labels of 2⅝ × 1 in on Letter" }).check();
  await page.locator('.paper__sheet svg[width="215.9mm"]').waitFor();
  await page.getByRole("button", { name: "Next page" }).click();
  await expect.poll(sheet).toMatch(/adrenaline.*280 micrograms = 2\.8 mL/);
  expect(await sheet()).not.toContain("vasopressor");
  await page.getByRole("checkbox", { name: "Class colours of ISO 26825" }).check();
  await expect.poll(sheet).toMatch(/adrenaline.*vasopressor/);
});

test("axe finds nothing on the Paper screen in light and dark", async () => {
  const { page } = await openPaper(sizes.phone);
  await page.getByRole("radio", { name: "Syringe labels" }).check();
  await page.getByText("There is no child on Bedside").waitFor();
  await expectAccessible(page);
  await page.getByRole("radio", { name: "Arm band" }).check();
  await page.locator(".paper__sheet svg").waitFor();
  // A page is one picture with a name.
  await expectAccessible(page, { exclude: ".paper__sheet svg > *" });
});
