// Measures the built page against the budgets of a cheap phone: npm run speed -w apps/web
//
// The processor is slowed down four times by the browser's own throttling. Figures are medians, and only as good as the
// machine is idle: they are printed, not tested.
import { type Bedside, openPlace, type Place, sizes } from "./support/bedside.ts";

const slowdown = 4;
const startBudgetMs = 1000;
const keyBudgetMs = 50;

function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  return Math.round(sorted[Math.floor(sorted.length / 2)] ?? Number.NaN);
}

async function slow({ page }: Bedside): Promise<void> {
  const session = await page.context().newCDPSession(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate: slowdown });
}

/** From an input event to the open problems computed, rendered and laid out as far as they are in sight, 50 times. */
async function keyPressesMs(bedside: Bedside, { opensAll }: { opensAll: boolean }): Promise<number[]> {
  await bedside.length.fill("136");
  await bedside.arm.fill("190");
  await bedside.lines.first().waitFor();
  if (opensAll) await bedside.openProblems();
  await slow(bedside);
  return bedside.page.evaluate(async () => {
    const field = document.querySelector<HTMLInputElement>("#armMm");
    const total = document.querySelector(".weight-card__total dd");
    if (field === null || total === null) throw new Error("the page has no arm or no weight");
    const times: number[] = [];
    for (let i = 0; i < 50; i++) {
      const before = total.textContent;
      const start = performance.now();
      field.value = i % 2 === 0 ? "230" : "190";
      field.dispatchEvent(new InputEvent("input", { bubbles: true }));
      while (total.textContent === before) await Promise.resolve();
      document.body.getBoundingClientRect();
      times.push(performance.now() - start);
      await new Promise((resolve) => setTimeout(resolve, 30));
    }
    return times;
  });
}

/** From opening the page without a network to a form that answers, 7 times. */
async function offlineStartsMs(bedside: Bedside, url: string): Promise<number[]> {
  await slow(bedside);
  const times: number[] = [];
  for (let i = 0; i < 7; i++) {
    await bedside.page.goto("about:blank");
    await bedside.page.goto(url);
    await bedside.page.waitForFunction(() => performance.getEntriesByName("usable").length > 0);
    times.push(
      await bedside.page.evaluate(() => performance.getEntriesByName("usable")[0]?.startTime ?? Number.NaN),
    );
  }
  return times;
}

/** Operators of the keystroke-level model in seconds: press, point, make up one's mind. */
const pressS = 0.2;
const pointS = 1.1;
const thinkS = 1.35;
/** Before the length, before the arm, before looking for the dose, and before reading it. */
const thoughts = 4;

/** From the first touch on the length to the first dose in sight: touches, and what the page itself takes of it, 7 times. */
async function firstDose(place: Place): Promise<{ touches: number; ms: number[] }> {
  const ms: number[] = [];
  let touches = 0;
  for (let i = 0; i < 7; i++) {
    const bedside = await place.visit({
      viewport: sizes.phone,
      hasTouch: true,
      isMobile: true,
      reducedMotion: "reduce",
    });
    const { page, length } = bedside;
    await page.getByRole("button", { name: "How to measure: Length", exact: true }).waitFor();
    await slow(bedside);
    touches = 0;
    const start = performance.now();
    for (const name of ["", "1", "3", "6", "Next", "1", "9", "0", "Done"]) {
      const pad = page.getByRole("toolbar");
      await (name === "" ? length : pad.getByRole("button", { name, exact: true })).tap();
      touches++;
    }
    await page.locator('[data-line="adrenaline.arrest"] .dose-line__draw b').waitFor();
    ms.push(performance.now() - start);
    await page.context().close();
  }
  return { touches, ms };
}

const place = await openPlace();
const first = await firstDose(place);
const visitor = await place.visit();
const keyMs = median(await keyPressesMs(visitor, { opensAll: false }));
const shown = await visitor.lines.count();
const allOpen = await place.visit();
const allOpenMs = median(await keyPressesMs(allOpen, { opensAll: true }));
const uses = await allOpen.lines.count();
const bedside = await place.visit();
await bedside.readyOffline();
await place.stopServer();
const startMs = median(await offlineStartsMs(bedside, place.url));
await place.close();
console.log(`processor slowed ${slowdown} times`);
console.log(
  `key press to new sheet, ${shown} of ${uses} uses open as at the start, median of 50: ${keyMs} ms (budget ${keyBudgetMs})`,
);
console.log(`the same with all ${uses} uses open: ${allOpenMs} ms (no budget)`);
console.log(`offline start to usable, median of 7: ${startMs} ms (budget ${startBudgetMs})`);
console.log(
  `first touch to first dose on a phone: ${first.touches} touches; by the keystroke-level model ` +
    `${(first.touches * (pointS + pressS) + thoughts * thinkS).toFixed(1)} s of a person; ` +
    `a machine's fingers and the page take ${median(first.ms)} ms of it, median of 7`,
);
