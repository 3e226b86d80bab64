import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "playwright-core";
import { expect } from "vitest";

/** WCAG 2.2 AA and what axe-core's makers call best practice. */
const tags = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];
/** The rules that look at colours: all that can differ in the dark. */
const ofColours = ["color-contrast", "link-in-text-block"];

/**
 * Axe finds nothing on the page as it stands: everything in light, then the colours in dark, as the rest is the same page.
 * `exclude` is a part that is one picture to a reader.
 */
export async function expectAccessible(
  page: Page,
  { exclude }: { readonly exclude?: string } = {},
): Promise<void> {
  const axe = (): AxeBuilder => {
    const builder = new AxeBuilder({ page });
    return exclude === undefined ? builder : builder.exclude(exclude);
  };
  await layOut(page);
  await page.emulateMedia({ colorScheme: "light" });
  await expectClean(axe().withTags(tags), 15);
  await page.emulateMedia({ colorScheme: "dark" });
  await expectClean(axe().withRules(ofColours), 0);
}

/** Lines out of sight are laid out when they are scrolled to; sizes and places measured in the midst of that are nobody's. */
async function layOut(page: Page): Promise<void> {
  await page.evaluate(() => {
    const all = new CSSStyleSheet();
    all.replaceSync("* { content-visibility: visible !important }");
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, all];
  });
}

async function expectClean(axe: AxeBuilder, fewestPasses: number): Promise<void> {
  const { violations, passes } = await axe.analyze();
  const found = violations.map(({ id, nodes }) => ({ id, at: nodes.slice(0, 5).map(({ html }) => html) }));
  expect(found).toEqual([]);
  // A page that axe could not look at has no violations either.
  expect(passes.length).toBeGreaterThan(fewestPasses);
}
