import { AxeBuilder } from "@axe-core/playwright";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type Bedside, openPlace, type Place, sizes } from "./support/bedside.ts";

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

describe.each(["light", "dark"] as const)("axe finds nothing in %s", (colorScheme) => {
  describe.each(Object.entries(sizes))("on a %s", (_, viewport) => {
    test.each(Object.entries(states))("%s", async (_name, arrange) => {
      const bedside = await place.visit({ viewport, colorScheme });
      await arrange(bedside);
      const { violations, passes } = await new AxeBuilder({ page: bedside.page })
        .withTags(["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"])
        .analyze();
      expect(violations.map(({ id, nodes }) => ({ id, at: nodes.map(({ html }) => html) }))).toEqual([]);
      expect(passes.length).toBeGreaterThan(15);
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
