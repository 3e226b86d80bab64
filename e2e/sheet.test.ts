import { afterAll, beforeAll, expect, test } from "vitest";
import { type Bedside, openPlace, type Place, readable } from "./support/bedside.ts";

let place: Place;
beforeAll(async () => {
  place = await openPlace();
});
afterAll(() => place.close());

async function openChild(): Promise<Bedside> {
  const bedside = await place.visit();
  await bedside.length.fill("136");
  await bedside.arm.fill("190");
  await bedside.lines.first().waitFor();
  return bedside;
}

test("a short list is kept on the device, across children and reloads, and taken off again", async () => {
  const { page, length } = await openChild();
  expect(await page.getByRole("button", { name: /^Short list/ }).count()).toBe(0);
  await page.locator('[data-line="adrenaline.arrest"] summary').click();
  await page.getByRole("button", { name: "Keep in the short list" }).click();
  await page.getByRole("button", { name: "Short list 1 use" }).waitFor();
  await page.reload();
  await page.getByRole("button", { name: "New child" }).click();
  await length.fill("82");
  const list = page.locator(".problem-group").first();
  expect(await list.getByRole("heading").innerText()).toMatch(/^Short list/);
  await list.locator('[data-line="adrenaline.arrest"] summary').click();
  await list.getByRole("button", { name: "Take off the short list" }).click();
  await expect.poll(() => page.getByRole("button", { name: /^Short list/ }).count()).toBe(0);
});

test("another published dose is one tap away, says so on its line, and ends with the child", async () => {
  const bedside = await openChild();
  const { page } = bedside;
  await bedside.openProblems();
  await bedside.openAll();
  const line = page.locator(".dose-line:has(.dose-detail__ways)").first();
  const id = (await line.getAttribute("data-line")) ?? "";
  const other = line.locator(".dose-detail__ways .chip").first();
  const title = readable(await other.innerText());
  await other.click();
  const same = page.locator(`[data-line="${id}"]`);
  await expect
    .poll(async () => readable(await same.locator("summary").innerText()))
    .toContain(`other published dose: ${title}`);
  await same.getByRole("button", { name: "Back to the first choice" }).click();
  await expect
    .poll(async () => readable(await same.locator("summary").innerText()))
    .not.toContain("other published");
});

test("an infusion has a table of what each setting of the pump gives", async () => {
  const bedside = await openChild();
  await bedside.openProblems();
  const line = bedside.page.locator('.dose-line:has(.dose-line__draw:has-text("mL/h"))').first();
  await line.locator("summary").click();
  const rows = line.locator(".rate-table").first().locator("tbody tr");
  const texts = (await rows.allInnerTexts()).map(readable);
  expect(texts.length).toBeGreaterThan(2);
  const pairs = texts.map(
    (text) =>
      /^([\d.,]+) mL\/h ([\d.,]+) /
        .exec(text)
        ?.slice(1)
        .map((number) => Number(number.replace(",", ""))) ?? [],
  );
  const [first = [], last = []] = [pairs[0], pairs.at(-1)];
  // The dose goes with the rate.
  expect((last[1] ?? 0) / (first[1] ?? 1)).toBeCloseTo((last[0] ?? 0) / (first[0] ?? 1), 0);
});

test("the search finds equipment and signs as well", async () => {
  const bedside = await openChild();
  const { page } = bedside;
  await page.getByLabel("Find a medicine, use or equipment").fill("tracheal tube");
  await page.locator('[data-line="tracheal-tube.cuffed"]').waitFor();
  expect(await page.locator(".lookup-line").count()).toBeLessThan(8);
  await page.getByText(/^\d+ found\.$/).waitFor();
  await page.getByLabel("Find a medicine, use or equipment").fill("heart rate");
  await page.locator('[data-line="heart-rate"]').waitFor();
});

test("a dose in doubt says what would settle it", async () => {
  const bedside = await place.visit();
  await bedside.length.fill("136");
  await bedside.openProblems();
  await bedside.page
    .getByText(/Measure the arm.*: that would leave/)
    .first()
    .waitFor({ state: "attached" });
});

test("print from any screen gives the child's sheet", async () => {
  const bedside = await openChild();
  const { page } = bedside;
  await page.getByRole("link", { name: "Second reader" }).first().click();
  await page.getByRole("button", { name: "Hand over" }).waitFor();
  await page.emulateMedia({ media: "print" });
  await expect.poll(() => bedside.lines.count()).toBeGreaterThan(100);
  expect(await bedside.total()).toMatch(/^28\.\d kg$/);
  await page.emulateMedia({ media: "screen" });
  await page.getByRole("button", { name: "Hand over" }).waitFor();
});
