import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { builtPage, openPlace, type Place } from "./support/bedside.ts";

let place: Place;
let pageDir: string;
beforeEach(async () => {
  pageDir = mkdtempSync(join(tmpdir(), "steelyard-update-"));
  cpSync(builtPage, pageDir, { recursive: true });
  place = await openPlace({ pageDir });
});
afterEach(async () => {
  await place.close();
  rmSync(pageDir, { recursive: true });
});

/** Puts a page with another title in the place of the present one, as a new version would. */
function publish(title: string): void {
  const rewrite = (file: string, change: (text: string) => string): void => {
    const path = join(pageDir, file);
    const before = readFileSync(path, "utf8");
    const after = change(before);
    if (after === before) throw new Error(`${file} has nothing to change`);
    writeFileSync(path, after);
  };
  rewrite("index.html", (html) => html.replace(/<title>[^<]*/, `<title>${title}`));
  rewrite("sw.js", (script) => script.replace(/(url:\s*"index\.html",\s*revision:\s*")[^"]*/, "$1next"));
}

test("a new version waits for the next start and never replaces the page in the middle of a case", async () => {
  const { page, readyOffline, length, arm, total } = await place.visit();
  await readyOffline();
  publish("The next version");

  await page.reload();
  await length.fill("136");
  await arm.fill("190");
  await expect.poll(total).toMatch(/kg$/);
  await page.getByText("A newer version is ready and starts when the page is next opened.").waitFor();
  expect(await page.title()).toBe("Steelyard Bedside");
  await page.reload();
  expect(await page.title()).toBe("Steelyard Bedside");

  const context = page.context();
  await page.close();
  await expect
    .poll(
      async () => {
        const next = await context.newPage();
        await next.goto(place.url);
        const title = await next.title();
        await next.close();
        return title;
      },
      { timeout: 10_000, interval: 500 },
    )
    .toBe("The next version");
});
