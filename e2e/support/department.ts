import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { sizes } from "./bedside.ts";
import { startBrowser } from "./start-browser.ts";

/** The server of a department as somebody starts it, and people with browsers of their own. */
export interface DepartmentPlace {
  readonly url: string;
  /** What the server prints for whoever started it: the code of the first administrator. */
  readonly setUpCode: string;
  /** Whether a text lies readable anywhere in the database's files. */
  readonly isInDatabase: (text: string) => boolean;
  /** A person with a browser of their own, on the page of the department. */
  readonly visit: (options?: BrowserContextOptions) => Promise<Visitor>;
  readonly close: () => Promise<void>;
}

export interface Visitor {
  readonly page: Page;
  /** Errors and warnings of the console, policy violations among them. */
  readonly complaints: readonly string[];
}

const main = join(import.meta.dirname, "../../apps/server/src/main.ts");

/** Starts the server with a fresh database and a browser beside it. */
export async function openDepartmentPlace(): Promise<DepartmentPlace> {
  const folder = mkdtempSync(join(tmpdir(), "steelyard-department-"));
  const server = spawn(process.execPath, [main, "--records"], {
    env: {
      ...process.env,
      STEELYARD_PORT: "0",
      STEELYARD_LOG: "silent",
      STEELYARD_SITE: "resus",
      STEELYARD_LOCAL_LINK: "true",
      STEELYARD_DATABASE: join(folder, "records.sqlite"),
    },
    stdio: ["ignore", "pipe", "pipe"],
  });
  const browser: Promise<Browser> = startBrowser();
  const { url, setUpCode } = await printed(server);
  return {
    url,
    setUpCode,
    isInDatabase: (text) =>
      readdirSync(folder).some((file) => readFileSync(join(folder, file)).includes(text)),
    visit: async (options = {}) => {
      const context = await (await browser).newContext({ viewport: sizes.desk, ...options });
      const page = await context.newPage();
      const complaints: string[] = [];
      page.on("console", (message) => {
        if (message.type() === "error" || message.type() === "warning") complaints.push(message.text());
      });
      page.on("pageerror", (error) => complaints.push(String(error)));
      await page.goto(`${url}/department`);
      return { page, complaints };
    },
    close: async () => {
      await (await browser).close();
      const ended = once(server, "exit");
      server.kill("SIGKILL");
      await ended;
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

function printed(server: ChildProcess): Promise<{ readonly url: string; readonly setUpCode: string }> {
  let said = "";
  return new Promise((resolve, reject) => {
    const hear = (chunk: Buffer): void => {
      said += chunk;
      const url = /http:\/\/[^\s/]+/.exec(said)?.[0];
      const setUpCode = /within a day: (\S+)/.exec(said)?.[1];
      if (url !== undefined && setUpCode !== undefined) resolve({ url, setUpCode });
    };
    server.stdout?.on("data", hear);
    server.stderr?.on("data", hear);
    server.on("exit", (code) => reject(new Error(`The server ended with ${code}: ${said}`)));
  });
}
