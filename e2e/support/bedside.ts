import { existsSync } from "node:fs";
import { join } from "node:path";
import { createServer } from "@steelyard/server";
import type { BrowserContextOptions, Locator, Page } from "playwright-core";
import { startBrowser } from "./start-browser.ts";

export const sizes = {
  phone: { width: 390, height: 844 },
  tablet: { width: 820, height: 1180 },
  desk: { width: 1280, height: 800 },
} as const;

/** The real server with the built page, and a browser to look at it. */
export interface Place {
  /** A fresh visitor: no cache, no service worker, nothing kept. */
  readonly visit: (options?: BrowserContextOptions) => Promise<Bedside>;
  readonly url: string;
  /** Takes the network away for good: nobody answers under the address any more. */
  readonly stopServer: () => Promise<void>;
  readonly close: () => Promise<void>;
}

/** The folder of the built page; `STEELYARD_PAGE` names another one. */
export const builtPage = process.env.STEELYARD_PAGE ?? join(import.meta.dirname, "../../apps/web/dist");

export async function openPlace({
  pageDir = builtPage,
  browserSwitches = [],
  server: given,
}: {
  readonly pageDir?: string;
  /** Another server than that of the page alone. */
  readonly server?: Awaited<ReturnType<typeof createServer>>;
  readonly browserSwitches?: readonly string[];
} = {}): Promise<Place> {
  if (!existsSync(join(pageDir, "index.html"))) {
    throw new Error("The page is not built. The journeys run with: npm run e2e");
  }
  const server = given ?? (await createServer({ pageDir }));
  const url = await server.listen({ host: "127.0.0.1", port: 0 });
  const browser = await startBrowser(browserSwitches);
  /** At once: a browser opens connections ahead of what it may ask, and a server that is polite waits for them. */
  const stop = async (): Promise<void> => {
    const closed = server.close();
    server.server.closeAllConnections();
    await closed;
  };
  return {
    url,
    visit: async (options = {}) => {
      const context = await browser.newContext({ viewport: sizes.phone, ...options });
      const page = await context.newPage();
      const complaints: string[] = [];
      page.on("console", (message) => {
        if (message.type() === "error" || message.type() === "warning") complaints.push(message.text());
      });
      page.on("pageerror", (error) => complaints.push(String(error)));
      await page.goto(url);
      return bedside(page, complaints);
    },
    stopServer: stop,
    close: async () => {
      await browser.close();
      await stop();
    },
  };
}

/** The page as its user knows it. */
export interface Bedside {
  readonly page: Page;
  /** Errors and warnings of the console, policy violations among them. */
  readonly complaints: readonly string[];
  readonly length: Locator;
  readonly arm: Locator;
  readonly issues: Locator;
  /** Every sentence about the fields. */
  readonly said: () => Promise<string[]>;
  /** Large number of the card, as it is read: "28.4 kg". */
  readonly total: () => Promise<string>;
  readonly card: () => Promise<string>;
  /** What is to be drawn up or set for a line of the sheet. */
  readonly draw: (line: string) => Promise<string>;
  /** The lines of the problems that are open. */
  readonly lines: Locator;
  /** Opens every field that is folded away. */
  readonly openFields: () => Promise<void>;
  /** Opens every problem of the sheet. */
  readonly openProblems: () => Promise<void>;
  /** Opens every line of the problems that are open. */
  readonly openAll: () => Promise<void>;
  readonly readyOffline: () => Promise<void>;
}

function bedside(page: Page, complaints: readonly string[]): Bedside {
  const read = async (locator: Locator): Promise<string> => readable(await locator.innerText());
  return {
    page,
    complaints,
    length: page.getByRole("textbox", { name: "Length", exact: true }),
    arm: page.getByRole("textbox", { name: "Arm, mid-upper" }),
    issues: page.locator(".field-messages__one"),
    said: async () => (await page.locator(".field-messages__one > p").allInnerTexts()).map(readable),
    total: () => read(page.locator(".weight-card__total dd")),
    card: () => read(page.locator(".weight-card")),
    // Its text, not what is rendered of it: a line out of sight is not laid out.
    draw: async (line) =>
      readable((await page.locator(`[data-line="${line}"] .dose-line__draw b`).textContent()) ?? ""),
    lines: page.locator(".dose-line"),
    openFields: async () => {
      const more = page.getByRole("button", { name: "Add more" });
      if (await more.isVisible()) await more.click();
      const folded = page.locator(".bedside__ask button");
      while ((await folded.count()) > 0) await folded.first().click();
    },
    openProblems: async () => {
      await page.locator(".problem-group").first().waitFor();
      await page.evaluate(() => {
        for (const head of document.querySelectorAll<HTMLElement>(".problem-group [aria-expanded=false]"))
          head.click();
      });
      await page.waitForFunction(() => !document.querySelector(".problem-group [aria-expanded=false]"));
    },
    openAll: async () => {
      await page.evaluate(() => {
        for (const line of document.querySelectorAll("details")) line.open = true;
      });
      await page.waitForFunction(
        () => document.querySelectorAll("details:not(:has(.dose-detail))").length === 0,
      );
    },
    readyOffline: () => page.getByText("Ready to work without a network.").waitFor({ timeout: 20_000 }),
  };
}

/** Text with every kind of space made one plain space. */
export function readable(text: string): string {
  return text.replaceAll(/[\s\u00a0]+/g, " ").trim();
}
