import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type Bedside, openPlace, type Place, readable, sizes } from "./support/bedside.ts";
import { expectAccessible } from "./support/expect-accessible.ts";

let place: Place;
beforeAll(async () => {
  place = await openPlace();
});
afterAll(() => place.close());

const viewports = { ...sizes, narrow: { width: 320, height: 640 } } as const;

/** A visitor whose browser asks for French. */
async function visit(viewport: keyof typeof viewports = "phone"): Promise<Bedside> {
  const bedside = await place.visit({ viewport: viewports[viewport], locale: "fr-FR" });
  await bedside.page.getByText("Traduction automatique, non relue.").waitFor();
  return bedside;
}

/** 136.5 cm and 190 mm, typed as in French; ids, as the names are in French now. */
async function fill({ page, lines }: Bedside, length = "136,5"): Promise<void> {
  await page.locator("#lengthCm").fill(length);
  await page.locator("#armMm").fill("190");
  await lines.first().waitFor();
}

function sticksOut(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const out = document.documentElement.scrollWidth > innerWidth ? ["the page scrolls sideways"] : [];
    for (const element of document.querySelectorAll<HTMLElement>("body *:not(.unseen, .unseen *, svg *)")) {
      const { right, width } = element.getBoundingClientRect();
      if (width > 0 && right > innerWidth + 0.5)
        out.push(`${element.className || element.tagName} ends at ${right}`);
      if (element.tagName === "INPUT" && element.scrollWidth > element.clientWidth + 1)
        out.push(`${element.id} hides its text`);
      if (element.matches(".measure-field__how")) {
        const words = document.createRange();
        words.selectNodeContents(element.previousElementSibling?.firstChild ?? element);
        const own = document.createRange();
        own.selectNodeContents(element);
        const { left, top } = own.getBoundingClientRect();
        const hits = [...words.getClientRects()].some((line) => line.right > left && line.bottom - 4 > top);
        if (hits) out.push(`${element.ariaLabel} lies on its hint`);
      }
    }
    return out;
  });
}

test("the browser's language is taken, said to be unreviewed, and told to screen readers", async () => {
  const { page } = await visit();
  expect(await page.locator("html").getAttribute("lang")).toBe("fr");
  expect(readable(await page.locator(".draft-banner").innerText())).toMatch(
    /^Projet de formulaire, non signé/,
  );
  expect(readable(await page.locator(".cautions").innerText())).toContain("Pesez l’enfant dès que possible.");
});

test("136,5 is read, and every dose is written with a comma", async () => {
  const bedside = await visit();
  await fill(bedside);
  expect(await bedside.total()).toMatch(/^2\d,\d kg$/);
  await bedside.openAll();
  const { page } = bedside;
  const own = await page.locator(".weight-card, .dose-line__draw, .dose-detail__steps").allTextContents();
  expect(own.length).toBeGreaterThan(10);
  expect(own.join(" ").match(/\d\.\d+\s(?:mg|micro\w+|mL|g|kg|unit\S*)/g) ?? []).toEqual([]);
  expect(await bedside.draw("adrenaline.arrest")).toMatch(/^\d+(,\d+)? mL$/);
  expect(await page.locator("[data-line='adrenaline.arrest'] [lang=en]").first().textContent()).toMatch(
    /drenaline/,
  );
});

test("a doubt is told in French", async () => {
  const { page, issues, said } = await visit();
  await page.locator("#armMm").fill("19");
  await page.locator("#armMm").blur();
  await issues.first().waitFor();
  expect((await said()).join(" ")).toMatch(/Périmètre brachial de 19 mm impossible/);
  await page.getByRole("button", { name: /^Prendre 19.cm \(190.mm\)$/ }).click();
  await expect.poll(() => page.locator("#armMm").inputValue()).toBe("190");
});

test("the switch changes the language both ways, keeps what was typed, and is remembered", async () => {
  const bedside = await place.visit();
  const { page } = bedside;
  await fill(bedside);
  const before = await bedside.total();
  await page.getByRole("button", { name: "Français" }).click();
  await page.getByText("Traduction automatique, non relue.").waitFor();
  expect(await page.locator("#lengthCm").inputValue()).toBe("136,5");
  expect(await bedside.total()).toBe(before.replace(".", ","));
  await page.reload();
  await page.getByText("Traduction automatique, non relue.").waitFor();
  await page.getByRole("button", { name: "English" }).click();
  await page.getByText("Traduction automatique").waitFor({ state: "detached" });
  expect(await page.locator("html").getAttribute("lang")).toBe("en");
});

describe.each(["narrow", "phone", "desk"] as const)("in French on a %s screen", (viewport) => {
  test("nothing sticks out, empty, full, open and in doubt; axe finds nothing where it is narrow", async () => {
    const bedside = await visit(viewport);
    const { page } = bedside;
    expect(await sticksOut(page)).toEqual([]);
    await fill(bedside);
    const more = page.getByRole("button", { name: "Ajouter autre chose" });
    await more.click();
    const folded = page.locator(".bedside__ask button");
    while ((await folded.count()) > 0) await folded.first().click();
    await bedside.openAll();
    await page.locator("#lengthCm").fill("1,36");
    await page.locator("#lengthCm").blur();
    await bedside.issues.first().waitFor();
    expect(await sticksOut(page)).toEqual([]);
    await page.locator("#lengthCm").fill("136,5");
    await bedside.lines.first().waitFor();
    // The words are the same at every width.
    if (viewport === "narrow") await expectAccessible(page);
  });
});

test.each(["narrow", "phone", "desk"] as const)(
  "on a %s screen nothing of the other screens sticks out",
  async (viewport) => {
    const { page } = await visit(viewport);
    for (const screen of ["reader", "casebook", "practice", "paper", "study", "site"]) {
      await page.evaluate((id) => {
        location.hash = `#/${id}`;
      }, screen);
      await expect
        .poll(() => page.locator("main").innerText(), { timeout: 10_000 })
        .not.toMatch(/^(Chargement\.)?$/);
      expect(await sticksOut(page), screen).toEqual([]);
      expect(await page.locator("main").innerText(), screen).not.toMatch(/\b(the|with|and|this)\b/);
    }
  },
);
