// Draws the icons of the app from `icon.svg`: npm run icons -w apps/web
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { startBrowser } from "./support/start-browser.ts";

const folder = join(import.meta.dirname, "../apps/web/public");
const icon = readFileSync(join(folder, "icon.svg"), "utf8");
// A maskable icon is cut to any shape: no corners of its own, and the drawing within the middle four fifths.
const maskable = icon
  .replace('viewBox="0 0 512 512"', 'viewBox="-64 -64 640 640"')
  .replace('<rect width="512" height="512" rx="104"', '<rect x="-64" y="-64" width="640" height="640"');

const browser = await startBrowser();
for (const { name, svg, sizePx } of [
  { name: "icon-192.png", svg: icon, sizePx: 192 },
  { name: "icon-512.png", svg: icon, sizePx: 512 },
  { name: "icon-maskable-512.png", svg: maskable, sizePx: 512 },
]) {
  const page = await browser.newPage({ viewport: { width: sizePx, height: sizePx } });
  await page.setContent(`<style>body{margin:0}svg{display:block;width:100vw;height:100vw}</style>${svg}`);
  writeFileSync(join(folder, name), await page.screenshot({ omitBackground: true }));
  await page.close();
}
await browser.close();
