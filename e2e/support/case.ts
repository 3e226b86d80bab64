import { readFile } from "node:fs/promises";
import type { Locator, Page } from "playwright-core";
import { type Bedside, readable } from "./bedside.ts";

/** The clock and the log as their user knows them. */
export interface CaseLog {
  /** Types the two measurements of an invented child and waits for its doses. */
  readonly measure: (lengthCm: string, armMm: string) => Promise<void>;
  /** Opens a line of the sheet and marks it given. */
  readonly give: (line: string) => Promise<void>;
  /** What the foot of the screen says: time, and what is due. */
  readonly bar: () => Promise<string>;
  readonly openLog: () => Promise<void>;
  /** What is said of one line among what is given and due. */
  readonly due: (line: string) => Promise<string>;
  /** Every entry of the log, the last first. */
  readonly entries: () => Promise<string[]>;
  readonly code: () => Promise<string>;
}

export function caseLog({ page, lines }: Pick<Bedside, "page" | "lines">): CaseLog {
  const texts = async (locator: Locator): Promise<string[]> => (await locator.allInnerTexts()).map(readable);
  return {
    measure: async (lengthCm, armMm) => {
      await page.locator("#lengthCm").fill(lengthCm);
      await page.locator("#armMm").fill(armMm);
      await lines.first().waitFor();
      await page.locator(".case-bar").waitFor();
    },
    give: async (line) => {
      const details = page.locator(`details[data-line="${line}"]`);
      if ((await details.getAttribute("open")) === null) await details.locator("summary").click();
      await details.getByRole("button", { name: /^Mark .* given$/ }).click();
      await page.getByRole("status").filter({ hasText: "marked." }).waitFor();
    },
    bar: async () => readable(await page.locator(".case-bar").innerText()),
    openLog: () => page.getByRole("button", { name: "Log", exact: true }).click(),
    due: async (line) => readable(await page.locator(`[data-due="${line}"]`).innerText()),
    entries: () => texts(page.locator(".log-list > li > p")),
    code: async () => (await page.locator(".case-log__panel h2").innerText()).replace("Case ", ""),
  };
}

/** What a button hands over as a download. */
export async function downloaded(page: Page, button: string): Promise<{ name: string; text: string }> {
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: button, exact: true }).click(),
  ]);
  return { name: download.suggestedFilename(), text: await readFile(await download.path(), "utf8") };
}

/** Goes to another screen as its user would, by the menu. */
export async function goTo(page: Page, screen: string): Promise<void> {
  await page.getByRole("button", { name: /other screens$/ }).click();
  await page.getByRole("link", { name: new RegExp(`^${screen}`) }).click();
  await page.waitForFunction((name) => document.title.endsWith(name), screen);
}
