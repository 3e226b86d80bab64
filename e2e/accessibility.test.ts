import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type Bedside, openPlace, type Place, sizes } from "./support/bedside.ts";
import { expectAccessible } from "./support/expect-accessible.ts";

let place: Place;
beforeAll(async () => {
  place = await openPlace();
});
afterAll(() => place.close());

const states: Readonly<Record<string, (bedside: Bedside) => Promise<void>>> = {
  empty: async () => undefined,
  "full, with every line open": async ({ length, arm, lines, openAll }) => {
    await length.fill("136");
    await arm.fill("190");
    await lines.first().waitFor();
    await openAll();
  },
  "searched, with every problem open before": async ({ page, length, lines, openProblems }) => {
    await length.fill("62");
    await lines.first().waitFor();
    await openProblems();
    await page.getByLabel("Find a medicine, use or equipment").fill("infusion");
    await lines.first().waitFor();
  },
  "in doubt, with every field open": async ({ page, length, arm, issues, openFields }) => {
    await openFields();
    await page.getByRole("textbox", { name: "Waist" }).fill("600");
    await length.fill("1,36");
    await arm.fill("19");
    await arm.blur();
    await issues.nth(2).waitFor();
  },
};

/** Each of these once in light and once in dark: what changes with the width is tried above. */
const others: Readonly<Record<string, (bedside: Bedside) => Promise<void>>> = {
  "the menu": async ({ page, length }) => {
    await length.fill("136");
    await page.getByRole("button", { name: "Bedside, other screens" }).click();
  },
  "how to measure": async ({ page, length }) => {
    await length.fill("136");
    await page.getByRole("button", { name: "How to measure: Length", exact: true }).click();
  },
  "the number keys": async ({ page, length }) => {
    await length.tap();
    await page.getByRole("toolbar").waitFor();
  },
  "the second reader": async ({ page, length }) => {
    await length.fill("136");
    await page.getByRole("link", { name: "Second reader" }).first().click();
    await page.getByRole("button", { name: "Hand over" }).waitFor();
  },
  "readings that differ": async ({ page, length, arm }) => {
    await length.fill("136");
    await arm.fill("190");
    await page.getByRole("link", { name: "Second reader" }).first().click();
    await page.getByRole("button", { name: "Hand over" }).click();
    await page.getByRole("textbox", { name: "Length, second reading" }).fill("139");
    await page.getByRole("textbox", { name: "Arm, second reading" }).fill("190");
    await page.getByRole("textbox", { name: "Arm, second reading" }).press("Enter");
    await page.getByRole("heading", { name: "Agreement" }).waitFor();
  },
};

describe("axe finds nothing in light and dark on a phone with", () => {
  test.each(Object.entries(others))("%s", async (_name, arrange) => {
    const bedside = await place.visit({ hasTouch: true, isMobile: true });
    await bedside.page.getByRole("button", { name: "How to measure: Length", exact: true }).waitFor();
    await arrange(bedside);
    await expectAccessible(bedside.page);
  });
});

describe("axe finds nothing in light and dark", () => {
  describe.each(Object.entries(sizes))("on a %s", (size, viewport) => {
    // The sheet is the same list at every width.
    const ofSize = Object.entries(states).filter(
      ([name]) => size === "phone" || !/^(full|searched)/.test(name),
    );
    test.each(ofSize)("%s", async (_name, arrange) => {
      const bedside = await place.visit({ viewport });
      await arrange(bedside);
      await expectAccessible(bedside.page);
    });
  });
});

test("what changes is told to a screen reader: the result politely, doubts beside their field", async () => {
  const { page, length, arm, total } = await place.visit();
  await length.fill("136");
  await arm.fill("190");
  await expect.poll(total).toMatch(/kg$/);
  const spoken = page.getByRole("status").filter({ hasText: "Total weight" });
  await expect
    .poll(() => spoken.textContent(), { timeout: 5_000 })
    .toMatch(/^Total weight 28\.\d\skg, 95 % range .* Ideal weight .* by problem\.$/);
});
