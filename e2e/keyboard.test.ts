import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { openPlace, type Place, sizes } from "./support/bedside.ts";
import { caseLog } from "./support/case.ts";

let place: Place;
beforeAll(async () => {
  place = await openPlace();
});
afterAll(() => place.close());

test("the whole way without a pointer: numbers, sex, a working, the next child", async () => {
  const { page, length, arm, total, lines } = await place.visit({ viewport: sizes.desk });
  const keys = page.keyboard;

  await keys.press("Tab");
  await expect.poll(() => focused()).toBe("Bedside, other screens");
  await keys.press("Tab");
  expect(await length.evaluate((field) => field === document.activeElement)).toBe(true);
  await keys.type("136");
  await keys.press("Enter");
  expect(await arm.evaluate((field) => field === document.activeElement)).toBe(true);
  await keys.type("190");
  await expect.poll(total).toMatch(/^28\.\d kg$/);

  await keys.press("Tab");
  await expect.poll(() => focused()).toBe("How to measure: Arm, mid-upper");
  for (let i = 0; i < 6 && (await focused()) !== "Add sex"; i++) await keys.press("Tab");
  await keys.press("Enter");
  await expect.poll(() => page.evaluate(() => document.activeElement?.getAttribute("name"))).toBe("sex");
  await keys.press("ArrowDown");
  expect(await page.getByLabel("girl").isChecked()).toBe(true);
  await page.getByText("Estimated from length, arm circumference and sex.").waitFor();

  // On to the first line of the sheet, past the other fields, the search and the first heading.
  for (let i = 0; i < 30 && !(await inSummary()); i++) await keys.press("Tab");
  expect(await inSummary()).toBe(true);
  await keys.press("Enter");
  await lines.first().locator(".dose-detail").waitFor({ state: "visible" });
  await keys.press("Space");
  await lines.first().locator(".dose-detail").waitFor({ state: "hidden" });

  for (let i = 0; i < 40 && (await focused()) !== "New child"; i++) await keys.press("Shift+Tab");
  await keys.press("Enter");
  expect(await length.inputValue()).toBe("");

  function focused(): Promise<string | null | undefined> {
    return page.evaluate(() => {
      const at = document.activeElement;
      return at?.getAttribute("aria-label") ?? at?.textContent;
    });
  }
  function inSummary(): Promise<boolean> {
    return page.evaluate(() => document.activeElement?.tagName === "SUMMARY");
  }
});

test("a problem opens and folds from the keyboard, and a search opens what it finds", async () => {
  const { page, length, lines } = await place.visit();
  await length.fill("136");
  await lines.first().waitFor();
  const heading = page.getByRole("button", { name: /^Seizure/ });
  await heading.focus();
  await page.keyboard.press("Enter");
  expect(await heading.getAttribute("aria-expanded")).toBe("true");
  await page.locator('[data-line^="lorazepam."]').first().waitFor();
  await page.keyboard.press("Space");
  expect(await heading.getAttribute("aria-expanded")).toBe("false");

  await page.getByLabel("Find a medicine, use or equipment").focus();
  await page.keyboard.type("lorazepam seiz");
  await page.getByText(/^\d+ found\.$/).waitFor();
  expect(await page.getByRole("heading", { level: 3 }).allInnerTexts()).toEqual(["Seizure"]);
  expect(await page.locator('[data-line^="lorazepam."]').count()).toBe(await lines.count());
  await page.keyboard.press("Escape");
  await heading.waitFor();
  expect(await heading.getAttribute("aria-expanded")).toBe("false");
});

test("the menu: open, choose, come back, and the focus is where reading goes on", async () => {
  const { page, length, total } = await place.visit({ viewport: sizes.phone });
  await length.fill("136");
  const menu = page.getByRole("button", { name: "Bedside, other screens" });
  await menu.focus();
  await page.keyboard.press("Enter");
  await page.getByRole("navigation", { name: "Screens" }).waitFor();
  await page.keyboard.press("Escape");
  await page.getByRole("navigation", { name: "Screens" }).waitFor({ state: "hidden" });
  expect(await menu.evaluate((button) => button === document.activeElement)).toBe(true);
  await page.keyboard.press("Enter");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await page.getByRole("heading", { name: "Steelyard Second reader" }).waitFor();
  // Title and focus follow what is painted.
  await expect.poll(() => page.title()).toBe("Steelyard Second reader");
  await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe("main");
  await page.goBack();
  await expect.poll(total).toMatch(/kg$/);
  await expect.poll(() => page.title()).toBe("Steelyard Bedside");
});

/** What has the focus, as its user would name it; nothing where it is lost. */
function focused(page: Page): Promise<string> {
  return page.evaluate(() => {
    const at = document.activeElement;
    if (at === null || at === document.body) return "";
    const labels = at instanceof HTMLInputElement ? [...(at.labels ?? [])] : [];
    return (at.getAttribute("aria-label") ?? labels[0]?.textContent ?? at.textContent ?? "")
      .replaceAll(/\s+/g, " ")
      .trim();
  });
}

/** Presses a key until the focus is on what is named so, as somebody without a pointer does. */
async function reach(page: Page, name: RegExp, key: "Tab" | "Shift+Tab" = "Tab"): Promise<void> {
  const passed: string[] = [];
  for (let i = 0; i < 60; i++) {
    await page.keyboard.press(key);
    const at = await focused(page);
    if (name.test(at)) return;
    passed.push(at);
  }
  throw new Error(`No ${key} leads to ${name}: ${passed.join(" | ")}`);
}

/** Opens another screen by the menu. */
async function toScreen(page: Page, screen: RegExp): Promise<void> {
  await reach(page, /other screens$/, "Shift+Tab");
  await page.keyboard.press("Enter");
  await page.getByRole("navigation", { name: "Screens" }).waitFor();
  await reach(page, screen);
  await page.keyboard.press("Enter");
  await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe("main");
}

test("clock, log and casebook without a pointer, and the focus is never lost", async () => {
  const bedside = await place.visit({ viewport: sizes.desk });
  const { page, lines } = bedside;
  const log = caseLog(bedside);
  const keys = page.keyboard;
  await reach(page, /^Length/);
  await keys.type("107");
  await keys.press("Enter");
  await keys.type("171");
  await lines.first().waitFor();
  await page.locator(".case-bar").waitFor();
  await reach(page, /^Start the clock/);
  await keys.press("Enter");
  await expect.poll(() => focused(page)).toBe("Log");

  // Back to the first line of the sheet, which is marked given, taken back, and marked again from the log.
  await reach(page, /^adrenaline/, "Shift+Tab");
  while (await page.evaluate(() => document.activeElement?.closest("[data-line]")?.previousElementSibling))
    await keys.press("Shift+Tab");
  await keys.press("Enter");
  await reach(page, /^Mark .* given$/);
  await keys.press("Enter");
  await page.getByRole("status").filter({ hasText: "marked." }).waitFor();
  await reach(page, /^Undo$/);
  await keys.press("Enter");
  await expect.poll(() => focused(page)).toBe("Log");
  await keys.press("Enter");
  await expect.poll(() => focused(page)).toBe("Close the log");
  await reach(page, /^Note/, "Shift+Tab");
  await keys.type("lines in");
  await keys.press("Enter");
  await expect.poll(async () => (await log.entries())[0]).toContain("lines in");
  await keys.press("Escape");
  await expect.poll(() => focused(page)).toBe("Log");

  await toScreen(page, /^Casebook/);
  await reach(page, /clock running/);
  await keys.press("Enter");
  await expect.poll(() => focused(page)).toMatch(/^Case /);
  await reach(page, /^Weight, scale/);
  await keys.type("18,4");
  await keys.press("Enter");
  await page.getByText("Weighed later: 18.4").waitFor();
  await reach(page, /^Delete the case$/);
  await keys.press("Enter");
  await expect.poll(() => focused(page)).toBe("Bring the case back");
  await keys.press("Enter");
  await expect.poll(() => focused(page)).toMatch(/^Case /);
  await page.getByText("Bring the case back").waitFor({ state: "detached" });
});

test("practice and the second reader without a pointer", async () => {
  const { page, lines } = await place.visit();
  const keys = page.keyboard;
  await toScreen(page, /^Practice/);
  await reach(page, /^Start with the first child$/);
  await keys.press("Enter");
  await expect.poll(() => focused(page)).toMatch(/^Child 1 of 20/);
  await reach(page, /^Length/);
  await keys.type("80");
  await keys.press("Tab");
  await keys.type("150");
  await keys.press("Enter");
  await expect.poll(() => focused(page)).toBe("Next child");
  await keys.press("Enter");
  await expect.poll(() => focused(page)).toMatch(/^Child 2 of 20/);

  await toScreen(page, /^Bedside/);
  await reach(page, /^Length/);
  await keys.type("136");
  await keys.press("Enter");
  await keys.type("190");
  await lines.first().waitFor();
  await toScreen(page, /^Second reader/);
  await reach(page, /^Hand over$/);
  await keys.press("Enter");
  await expect.poll(() => focused(page)).toBe("For the second reader");
  await reach(page, /^Length, second/);
  await keys.type("136.8");
  await keys.press("Enter");
  await keys.type("194");
  await keys.press("Enter");
  await expect.poll(() => focused(page)).toBe("Agreement");
  await reach(page, /^Take both readings in$/);
  await keys.press("Enter");
  await page.getByText("Two readings, 4 mm apart: 192 mm counts.").waitFor();
  await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe("main");
});

test("whatever has the focus shows it", async () => {
  const { page, length, arm, lines } = await place.visit();
  await length.fill("136");
  await arm.fill("190");
  await lines.first().waitFor();
  // Where a click lands is where the next Tab starts.
  await page.getByRole("heading", { level: 1 }).click();
  const seen = new Set<string>();
  for (let i = 0; i < 14; i++) {
    await page.keyboard.press("Tab");
    const shown = await page.evaluate(() => {
      const at = document.activeElement as HTMLElement;
      const around = at.closest(".measure-field") ?? at;
      const { outlineStyle, outlineWidth } = getComputedStyle(at);
      const ring = outlineStyle !== "none" && Number.parseFloat(outlineWidth) >= 2;
      return { tag: at.tagName, visible: ring || getComputedStyle(around).boxShadow !== "none" };
    });
    seen.add(shown.tag);
    expect(shown.visible, shown.tag).toBe(true);
  }
  expect([...seen].sort()).toEqual(["A", "BUTTON", "INPUT", "SELECT"]);
});
