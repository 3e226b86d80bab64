import { type Browser, chromium } from "playwright-core";

/** Starts the browser of this machine; `CHROMIUM` names another one. It talks to nobody but the page; `more` are switches of its own. */
export function startBrowser(more: readonly string[] = []): Promise<Browser> {
  return chromium.launch({
    executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
    args: [
      "--no-sandbox",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
      "--disable-gpu",
      "--disable-quic",
      "--no-first-run",
      ...more,
    ],
  });
}
