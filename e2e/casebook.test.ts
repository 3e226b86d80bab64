import { readCaseFile, readStudyRows } from "@steelyard/records/case";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { practiceChildren } from "../apps/web/src/state/practice-children.ts";
import { type Bedside, openPlace, type Place, readable, sizes } from "./support/bedside.ts";
import { caseLog, downloaded, goTo } from "./support/case.ts";
import { expectAccessible } from "./support/expect-accessible.ts";

let place: Place;
beforeAll(async () => {
  place = await openPlace();
});
afterAll(() => place.close());

/** A visitor with one case in the casebook, open on its page. */
async function withCase(options: Parameters<Place["visit"]>[0] = {}): Promise<Bedside> {
  const bedside = await place.visit(options);
  const log = caseLog(bedside);
  await log.measure("107", "171");
  await log.give("adrenaline.arrest");
  await goTo(bedside.page, "Casebook");
  await bedside.page.locator(".case-list a").waitFor();
  return bedside;
}

const file = (name: string, text: string) => ({ name, mimeType: "text/plain", buffer: Buffer.from(text) });

test("a later weight: asked again where it is unlikely, kept with its day, counted in the study file", async () => {
  const { page, complaints } = await withCase();
  await page.getByText("1 case waits for a scale weight").waitFor();
  await page.locator(".case-list a").click();
  const weight = page.getByLabel("Weight, scale");
  await weight.fill("1,8,4");
  await weight.press("Enter");
  await page.getByText("A weight between").waitFor();
  await weight.fill("81,4");
  await weight.press("Enter");
  await page.getByText("outside the 95 % range").waitFor();
  await weight.fill("18,4");
  await weight.press("Enter");
  await page.getByText(/Weighed later: 18.4.kg on/).waitFor();
  await page.getByRole("link", { name: "All cases" }).click();
  expect(readable(await page.locator(".case-list").innerText())).toMatch(
    /weighed 18.4 kg on .*, estimate −3\.\d % off/,
  );
  const csv = await downloaded(page, "CSV for study");
  const { rows, faults } = readStudyRows(csv.text);
  expect(faults).toEqual([]);
  expect(rows[0]?.study).toMatchObject({
    weightKg: 18.4,
    weightDaysAfter: 0,
    measurements: { lengthCm: 107, armMm: 171 },
  });
  expect(complaints).toEqual([]);
});

test("delete, bring back, delete for good; out as JSON and in again", async () => {
  const { page } = await withCase();
  const json = await downloaded(page, "All cases, JSON");
  await page.locator(".case-list a").click();
  await page.getByRole("button", { name: "Delete the case" }).click();
  await page.getByRole("button", { name: "Bring the case back" }).click();
  await page.getByRole("button", { name: "Delete the case" }).click();
  await page.getByRole("button", { name: "Delete for good" }).click();
  await page.getByRole("button", { name: /cannot be undone/ }).click();
  await page.getByText("is off this device").waitFor();
  await page.getByRole("link", { name: "All cases" }).click();
  await page.reload();
  await page.getByText("No cases yet").waitFor();
  for (let times = 0; times < 2; times += 1) {
    await page.getByLabel("File of cases").setInputFiles(file("cases.json", json.text));
    await page.getByText(/entries of 1 case taken in/).waitFor();
    expect(await page.locator(".case-list a").count()).toBe(1);
  }
});

test("a broken file: every fault is named, what is whole comes in, and nothing that was there changes", async () => {
  const { page } = await withCase();
  const json = await downloaded(page, "All cases, JSON");
  const events = JSON.parse(json.text).events as Record<string, unknown>[];
  const choose = (text: string) => page.getByLabel("File of cases").setInputFiles(file("cases", text));
  const alert = page.getByRole("alert");
  await choose(json.text.slice(0, 300));
  await alert.getByText("damaged or no JSON").waitFor();
  await choose("[]");
  await alert.getByText("not a file of cases").waitFor();
  const other = { ...events[0], id: crypto.randomUUID(), caseId: crypto.randomUUID() };
  await choose(
    JSON.stringify({
      format: "steelyard-cases",
      version: 1,
      events: [{ ...other, code: "Ada L." }, 7, other],
    }),
  );
  await alert.getByText("Entry 1: code must be a code").waitFor();
  await alert.getByText("Entry 2: is no entry").waitFor();
  expect(await page.locator(".case-list a").count()).toBe(2);
  await choose("child_id,lying_length_cm,arm_mm\nK47-2TP,1O7,171\nK47-2TQ,107,171");
  await alert.getByText("Row 2, lying_length_cm: “1O7” is not a number").waitFor();
  await page.locator(".case-list__code").filter({ hasText: "K47-2TQ" }).waitFor();
  expect(await page.locator(".case-list a").count()).toBe(3);
  const after = readCaseFile((await downloaded(page, "All cases, JSON")).text);
  expect(after.ok && events.every(({ id }) => after.value.events.some((event) => event.id === id))).toBe(
    true,
  );
});

test("a passcode seals what is kept; marking goes on without it; a wrong one opens nothing", async () => {
  const { page } = await withCase();
  await page.getByRole("textbox", { name: "Passcode", exact: true }).fill("three plain words");
  await page.getByLabel("Passcode once more").fill("three plain words");
  await page.getByRole("button", { name: "Set the passcode" }).click();
  await page.getByRole("button", { name: "Lock now" }).click();
  expect(await page.locator(".case-list a").count()).toBe(0);
  const kept = await page.evaluate(
    () =>
      new Promise<string>((resolve) => {
        const open = indexedDB.open("steelyard-cases");
        open.onsuccess = () => {
          const all = open.result.transaction("events").objectStore("events").getAll();
          all.onsuccess = () => resolve(JSON.stringify(all.result));
        };
      }),
  );
  expect(kept).not.toMatch(/adrenaline|lengthCm/);
  await page.goto(`${place.url}/#/`);
  await page.reload();
  await page.locator(".case-bar").waitFor();
  await caseLog({ page, lines: page.locator(".dose-line") } as Bedside).give("adrenaline.arrest");
  await goTo(page, "Casebook");
  await page.reload();
  const passcode = page.getByRole("textbox", { name: "Passcode", exact: true });
  await passcode.fill("three plain worms");
  await page.getByRole("button", { name: "Unlock" }).click();
  await page.getByText("This is not the passcode.").waitFor();
  await passcode.fill("three plain words");
  await page.getByRole("button", { name: "Unlock" }).click();
  await page.locator(".case-list a").first().click();
  await expect.poll(() => page.locator('[data-event="dose-given"]').count()).toBe(2);
  await page.getByRole("link", { name: "All cases" }).click();
  await page.getByRole("button", { name: "Take the passcode off" }).click();
  await page.getByRole("button", { name: "Set the passcode" }).waitFor();
  await page.reload();
  await page.locator(".case-list a").first().waitFor();
});

describe("practice", () => {
  test("twenty children by keyboard alone: the error is told, and the casebook stays empty", async () => {
    const { page, complaints } = await place.visit();
    await goTo(page, "Practice");
    await page.getByText("This child is invented").waitFor();
    await page.getByRole("button", { name: "Start with the first child" }).focus();
    await page.keyboard.press("Enter");
    for (const [i, { lengthCm, armMm }] of practiceChildren.entries()) {
      await page.getByRole("heading", { name: `Child ${i + 1} of 20` }).waitFor();
      await page.locator("h2:focus").waitFor();
      await page.keyboard.press("Tab");
      await page.keyboard.type(String(lengthCm));
      await page.keyboard.press("Tab");
      // The first one a whole ten off.
      await page.keyboard.type(String(i === 0 ? armMm - 10 : armMm));
      await page.keyboard.press("Enter");
      await page.getByText("from the drawing to the check").waitFor();
      expect(await page.getByText("Ten off").count()).toBe(i === 0 ? 1 : 0);
      await page.keyboard.press("Enter");
    }
    await page.getByText("19 of 20 with both readings within the limits.").waitFor();
    await goTo(page, "Casebook");
    await page.getByText("No cases yet").waitFor();
    expect(complaints).toEqual([]);
  });

  test("the drawing can be read: its ticks and its index stand where the child's numbers are", async () => {
    const { page } = await place.visit();
    await page.goto(`${place.url}/#/practice`);
    await page.getByRole("button", { name: "Start with the first child" }).click();
    const read = await page.locator(".tape").evaluateAll((tapes) =>
      tapes.map((tape) => {
        const numbers = [...tape.querySelectorAll("text")].map((text) => ({
          value: Number(text.textContent),
          x: Number(text.getAttribute("x")),
        }));
        const [a, b] = [numbers.at(0), numbers.at(-1)];
        const edge = Number(
          /^M([\d.]+)/.exec(tape.querySelector(".tape__edge")?.getAttribute("d") ?? "")?.[1],
        );
        return a && b ? a.value + ((edge - a.x) * (b.value - a.value)) / (b.x - a.x) : Number.NaN;
      }),
    );
    const [child] = practiceChildren;
    expect((read[1] ?? 0) - (read[0] ?? 0)).toBeCloseTo(child?.lengthCm ?? 0, 6);
    expect(read[2]).toBeCloseTo(child?.armMm ?? 0, 6);
  });
});

const screens: Readonly<Record<string, (page: Bedside["page"]) => Promise<void>>> = {
  "the casebook": async () => undefined,
  "one case": async (page) => {
    await page.locator(".case-list a").click();
    await page.getByLabel("Weight, scale").fill("81");
    await page.getByRole("button", { name: "Keep the weight" }).click();
    await page.getByText("outside the 95 % range").waitFor();
  },
  practice: async (page) => {
    await goTo(page, "Practice");
    await page.getByRole("button", { name: "Start with the first child" }).click();
    await page.getByLabel("Length, cm").fill("92");
    await page.getByLabel("Arm, mid-upper, mm").fill("163");
    await page.getByRole("button", { name: "Check" }).click();
    await page.getByText("Ten off").waitFor();
  },
  "the open log": async (page) => {
    await goTo(page, "Bedside");
    await page.getByRole("button", { name: "Log", exact: true }).click();
    await page.getByRole("button", { name: /^Correct/ }).click();
  },
};

test.each(["phone", "desk"] as const)(
  "on a %s every target has 44 px and nothing sticks out",
  async (size) => {
    const { page } = await withCase({ viewport: sizes[size] });
    for (const [screen, arrange] of Object.entries(screens)) {
      await arrange(page);
      await judge(page, screen);
      // The same elements in the same colours stand on a desk.
      if (size === "phone") await expectAccessible(page);
    }
  },
);

async function judge(page: Bedside["page"], screen: string): Promise<void> {
  const small = await page.locator(".case-log, .casebook, .practice").evaluateAll((parts) =>
    parts.flatMap((part) =>
      [...part.querySelectorAll("button, a, input:not([type=radio], [type=file])")]
        .map((target) => ({ target, box: target.getBoundingClientRect() }))
        .filter(({ box }) => box.width > 0 && (box.width < 44 || box.height < 44))
        .map(({ target }) => target.outerHTML.slice(0, 80)),
    ),
  );
  expect(small, screen).toEqual([]);
  const overflow = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  expect(overflow, screen).toBeLessThanOrEqual(0);
}
