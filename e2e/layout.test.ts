import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type Bedside, openPlace, type Place, sizes } from "./support/bedside.ts";

let place: Place;
beforeAll(async () => {
  place = await openPlace();
});
afterAll(() => place.close());

async function fill({ length, arm, lines }: Bedside): Promise<void> {
  await length.fill("136");
  await arm.fill("190");
  await lines.first().waitFor();
}

/** Elements that reach past the right edge or hide part of their own text. */
function sticksOut({ page }: Bedside): Promise<string[]> {
  return page.evaluate(() => {
    const out = document.documentElement.scrollWidth > innerWidth ? ["the page scrolls sideways"] : [];
    for (const element of document.querySelectorAll<HTMLElement>("body *:not(.unseen, .unseen *, svg *)")) {
      const { right, width } = element.getBoundingClientRect();
      if (width > 0 && right > innerWidth + 0.5)
        out.push(`${element.className || element.tagName} ends at ${right}`);
      if (element.tagName === "INPUT" && element.scrollWidth > element.clientWidth + 1)
        out.push(`${element.id} hides its text`);
    }
    return out;
  });
}

describe("nothing scrolls sideways", () => {
  test("at 360 px, with every problem open", async () => {
    const bedside = await place.visit({ viewport: { width: 360, height: 740 } });
    await bedside.length.fill("136");
    await bedside.lines.first().waitFor();
    await bedside.openProblems();
    await expect.poll(() => bedside.lines.count()).toBeGreaterThan(100);
    expect(await sticksOut(bedside)).toEqual([]);
  });

  test.each([
    ["360 px", { width: 360, height: 740 }],
    ["320 px, as at 400 % zoom on a desk", { width: 320, height: 640 }],
    ["640 px, as at 200 % zoom on a desk", { width: 640, height: 400 }],
    ["a tablet", sizes.tablet],
    ["a desk", sizes.desk],
  ])("at %s, empty, full, open and in doubt", async (_, viewport) => {
    const bedside = await place.visit({ viewport });
    expect(await sticksOut(bedside)).toEqual([]);
    await fill(bedside);
    expect(await sticksOut(bedside)).toEqual([]);
    await bedside.openAll();
    expect(await sticksOut(bedside)).toEqual([]);
    await bedside.openFields();
    await bedside.length.fill("1,36");
    await bedside.length.blur();
    await bedside.issues.first().waitFor();
    expect(await sticksOut(bedside)).toEqual([]);
  });

  test.each([
    ["phone", sizes.phone],
    ["desk", sizes.desk],
  ])("with text at 200 %% on a %s", async (_, viewport) => {
    const bedside = await place.visit({ viewport });
    await bedside.page.evaluate(() => {
      document.documentElement.style.fontSize = "200%";
    });
    await fill(bedside);
    await bedside.openAll();
    expect(await sticksOut(bedside)).toEqual([]);
  });
});

test("every target is at least 44 px high and wide", async () => {
  const bedside = await place.visit();
  await fill(bedside);
  await bedside.page.getByRole("button", { name: "Add more" }).click();
  const targets =
    "button:not([aria-hidden]), a, summary, select, input[type=search], .measure-field, .choice-field label";
  const measure = (selector: string): string[] =>
    [...document.querySelectorAll<HTMLElement>(selector)]
      .map((element) => ({ name: element.innerText, box: element.getBoundingClientRect() }))
      .filter(({ box }) => box.width > 0 && (box.height < 44 || box.width < 44))
      .map(({ name, box }) => `${name}: ${box.width} x ${box.height}`);
  expect(await bedside.page.evaluate(measure, targets)).toEqual([]);
  await bedside.openFields();
  expect(await bedside.page.evaluate(measure, targets)).toEqual([]);
});

test.each(Object.entries(sizes))("nothing moves when the result appears, on a %s", async (_, viewport) => {
  const bedside = await place.visit({ viewport });
  await bedside.length.fill("");
  const parts = [".measure-field", ".weight-card", ".weight-card__numbers dt"];
  const where = (): Promise<string[]> =>
    bedside.page.evaluate(
      (selectors) =>
        selectors.flatMap((selector) =>
          [...document.querySelectorAll(selector)].map((element) => {
            const { left, top, height } = element.getBoundingClientRect();
            return `${selector} ${Math.round(left)} ${Math.round(top)} ${Math.round(height)}`;
          }),
        ),
      parts,
    );
  await bedside.page.evaluate(() => document.fonts.ready);
  const before = await where();
  await fill(bedside);
  expect(await where()).toEqual(before);
});

test("the weight folds to one line while the sheet scrolls, on a phone, and nothing moves for it", async () => {
  const bedside = await place.visit();
  await fill(bedside);
  const line = bedside.page.locator(".weight-line");
  expect(await line.isVisible()).toBe(false);
  const shift = await bedside.page.evaluate(async () => {
    let sum = 0;
    const watch = new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) sum += (entry as unknown as { value: number }).value;
    });
    watch.observe({ type: "layout-shift" });
    scrollTo(0, 1200);
    await new Promise((resolve) => setTimeout(resolve, 400));
    return sum;
  });
  expect(shift).toBe(0);
  await line.waitFor();
  expect(await line.innerText()).toMatch(/28\.\d\skg/);
  const box = await line.boundingBox();
  expect(box?.y).toBe(0);
  expect(box?.height).toBeLessThan(60);
  await line.click();
  await line.waitFor({ state: "hidden" });
});

test("on a desk the whole card stays in sight", async () => {
  const bedside = await place.visit({ viewport: sizes.desk });
  await fill(bedside);
  await bedside.page.evaluate(() => scrollTo(0, 1200));
  expect((await bedside.page.locator(".weight-card").boundingBox())?.y).toBeGreaterThanOrEqual(0);
  expect(await bedside.page.locator(".weight-line").isVisible()).toBe(false);
});

test("on paper stand all problems, the workings of those that are open, and no buttons to press", async () => {
  const bedside = await place.visit();
  await fill(bedside);
  const ofOpen = await bedside.lines.count();
  await bedside.page.getByLabel("Find a medicine, use or equipment").fill("no such medicine");
  await expect.poll(() => bedside.lines.count()).toBe(0);
  await bedside.page.getByLabel("Find a medicine, use or equipment").fill("");
  await bedside.page.emulateMedia({ media: "print" });
  await expect.poll(() => bedside.lines.count()).toBeGreaterThan(100);
  expect(await bedside.page.locator(".dose-detail").count()).toBe(ofOpen);
  expect(await bedside.page.getByText("Working").first().isVisible()).toBe(true);
  expect(await bedside.page.getByLabel("Find a medicine, use or equipment").isVisible()).toBe(false);
  expect(await bedside.page.getByRole("button", { name: "New child" }).isVisible()).toBe(false);
  expect(await bedside.page.getByText("Draft formulary, not signed.").isVisible()).toBe(true);
});
