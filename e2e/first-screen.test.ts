import { afterEach, beforeEach, expect, test } from "vitest";
import { openPlace, type Place, readable } from "./support/bedside.ts";

let place: Place;
beforeEach(async () => {
  place = await openPlace();
});
afterEach(() => place.close());

/** The weight and the heads of the problems, where they stand on the page. */
const whatStands = (): string[] =>
  [
    ...document.querySelectorAll(".measure-field, .weight-card, .sheet__search, .problem-group h3#arrest"),
  ].map((element) => {
    const { left, top, width, height } = element.getBoundingClientRect();
    return [left, top, width, height].map(Math.round).join(" ");
  });

test("the weight does not wait for the formulary, and nothing above the doses moves when that comes", async () => {
  const { page, length, arm, total, lines } = await place.visit();
  let release = (): void => undefined;
  const held = new Promise<void>((resolve) => {
    release = resolve;
  });
  await page.context().route("**/assets/later-*.js", async (route) => {
    await held;
    await route.continue();
  });
  const later = page.waitForRequest("**/assets/later-*.js");
  await page.reload();
  await later;
  await length.fill("136");
  await arm.fill("190");
  await expect.poll(total).toMatch(/^28\.\d kg$/);
  expect(await lines.count()).toBe(0);
  const coming = page.locator(".problem-group__coming");
  expect(readable(await coming.first().innerText())).toContain("being computed");
  const announced = await coming.count();
  const before = await page.evaluate(whatStands);

  release();
  await lines.first().waitFor();
  expect(await lines.count()).toBe(announced);
  expect(await page.evaluate(whatStands)).toEqual(before);
});

test("doses that cannot be loaded are said to be missing, and the values survive loading again", async () => {
  const { page, length, arm, lines } = await place.visit();
  await page.context().route("**/assets/later-*.js", (route) => route.abort());
  await page.reload();
  await length.fill("136");
  await arm.fill("190");
  await page.getByRole("alert").getByText("The doses could not be loaded.").waitFor();
  await page.context().unroute("**/assets/later-*.js");
  await page.getByRole("button", { name: "Load the page again" }).click();
  await lines.first().waitFor();
  expect(await arm.inputValue()).toBe("190");
});
