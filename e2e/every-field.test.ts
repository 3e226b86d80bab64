import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type Bedside, openPlace, type Place, readable } from "./support/bedside.ts";

let place: Place;
beforeAll(async () => {
  place = await openPlace();
});
afterAll(() => place.close());

/** A child of 136 cm with an arm of 190 mm, every field open. */
async function openChild(): Promise<Bedside> {
  const bedside = await place.visit();
  await bedside.length.fill("136");
  await bedside.arm.fill("190");
  await bedside.openFields();
  return bedside;
}

/** Width of the 95 % range, kg. */
async function rangeKg({ card }: Bedside): Promise<number> {
  const [, low, high] = /([\d.]+) to ([\d.]+) kg/.exec(await card()) ?? [];
  return Number(high) - Number(low);
}

const remarks = async ({ page }: Bedside): Promise<string> =>
  readable(await page.locator(".weight-remarks").innerText());

describe("every field", () => {
  test("what would help most is said, and helps about as much as was said", async () => {
    const bedside = await place.visit();
    await bedside.length.fill("136");
    await bedside.arm.fill("190");
    const hint = bedside.page.getByRole("button", { name: /^Add waist, narrows to ±\d+\s%$/ });
    await hint.waitFor();
    const percent = Number(/±(\d+)/.exec(await hint.innerText())?.[1]);
    await hint.click();
    await bedside.page.getByRole("textbox", { name: "Waist" }).fill("60");
    await expect.poll(() => remarks(bedside)).toContain("length, arm circumference and waist circumference");
    const totalKg = Number.parseFloat(await bedside.total());
    expect((50 * (await rangeKg(bedside))) / totalKg).toBeCloseTo(percent, -1);
  });

  test("how the length was taken widens the range and changes no other word", async () => {
    const bedside = await openChild();
    const before = await rangeKg(bedside);
    await bedside.page.getByLabel("Child", { exact: true }).selectOption("seated");
    await bedside.page.getByLabel("Measured by").selectOption("one person");
    await expect.poll(() => rangeKg(bedside)).toBeGreaterThan(before);
    expect(await bedside.issues.count()).toBe(0);
  });

  test.each([
    ["Waist", "60", "waist circumference"],
    ["Thigh", "36", "thigh circumference"],
    ["Calf", "27", "calf circumference"],
    ["Weight, carer’s word", "27", "weight stated by the carer"],
    ["Age", "9 y", "age"],
  ])("%s enters the weight", async (label, text, name) => {
    const bedside = await openChild();
    await bedside.page.getByLabel(label, { exact: true }).fill(text);
    await expect.poll(() => remarks(bedside)).toMatch(new RegExp(`Estimated from .*${name}`));
  });

  test("a build by eye enters the weight", async () => {
    const bedside = await openChild();
    await bedside.arm.fill("");
    await bedside.page.getByRole("radio", { name: "very thin" }).check();
    await expect.poll(() => remarks(bedside)).toContain("Estimated from length and build.");
  });

  test("oedema leaves the arm out, a missing limb is taken off, and both are said", async () => {
    const bedside = await openChild();
    const before = Number.parseFloat(await bedside.total());
    await bedside.page.getByRole("radio", { name: "leg", exact: true }).check();
    await expect.poll(async () => Number.parseFloat(await bedside.total())).toBeLessThan(before);
    expect(await remarks(bedside)).toContain("The missing leg was taken off");
    await bedside.page.getByRole("group", { name: "Oedema" }).getByRole("radio", { name: "yes" }).check();
    await expect
      .poll(() => remarks(bedside))
      .toContain("Arm circumference was left out, as oedema adds to it.");
  });

  test("the burnt share of the body gives its fluid in its parts, and one over 100 % is refused at its field", async () => {
    const bedside = await openChild();
    const { page } = bedside;
    await page.getByLabel("Find a medicine, use or equipment").fill("burns fluid");
    const line = page.locator('[data-line$=".burns"]').first();
    await expect.poll(() => line.innerText()).toContain("No dose");
    await page.getByRole("textbox", { name: "Burnt skin" }).fill("20");
    await expect.poll(async () => readable(await line.innerText())).toMatch(/mL over 8 h, .* mL\/h; then/);
    await page.getByRole("textbox", { name: "Burnt skin" }).fill("140");
    await page.getByRole("textbox", { name: "Burnt skin" }).blur();
    await page.getByText("must be above 0 and at most 100").waitFor();
    await expect.poll(() => line.innerText()).toContain("No dose");
  });

  test("an earlier weight enters once both ages are there", async () => {
    const bedside = await openChild();
    await bedside.page.getByLabel("Age", { exact: true }).fill("10 y");
    await bedside.page.getByRole("textbox", { name: "Weight, earlier scale" }).fill("25");
    await bedside.page.getByRole("textbox", { name: "Age at that weight" }).fill("9 y");
    await expect.poll(() => remarks(bedside)).toMatch(/Estimated from .*earlier weight/);
  });

  test("a date of birth and the date of an earlier weight stand for the ages", async () => {
    const bedside = await openChild();
    const year = new Date().getFullYear();
    await bedside.page.getByLabel("Date of birth").fill(`${year - 10}-01-01`);
    await bedside.page.getByText(/^10 years \d+ months old\.$/).waitFor();
    await bedside.page.getByRole("textbox", { name: "Weight, earlier scale" }).fill("25");
    await bedside.page.getByLabel("Date of that weight").fill(`${year - 1}-01-01`);
    await expect.poll(() => remarks(bedside)).toMatch(/Estimated from .*earlier weight/);
  });

  test("second readings narrow the range; two that differ ask for a third, which settles it", async () => {
    const bedside = await openChild();
    const before = await rangeKg(bedside);
    await bedside.page.getByRole("textbox", { name: "Arm, second reading" }).fill("192");
    await bedside.page.getByText("Two readings, 2 mm apart: 191 mm counts.").waitFor();
    await expect.poll(() => rangeKg(bedside)).toBeLessThan(before);
    await bedside.page.getByRole("textbox", { name: "Arm, second reading" }).fill("205");
    await bedside.page.getByText("Read a third time").waitFor();
    await bedside.page.getByRole("textbox", { name: "Arm, third reading" }).fill("191");
    await bedside.page.getByText("Three readings, 15 mm apart: 191 mm counts.").waitFor();
  });

  test("a child longer than the tape in two parts, and one that cannot be laid straight by its knee height", async () => {
    const bedside = await openChild();
    await bedside.length.fill("150+22,5");
    await bedside.page.getByText("150+22,5 = 172.5 cm.").waitFor();
    await bedside.length.fill("");
    await bedside.page.getByRole("textbox", { name: "Knee height" }).fill("40");
    await expect.poll(() => remarks(bedside)).toMatch(/knee height/i);
  });

  test("how a measurement is taken is shown beside it on demand", async () => {
    const bedside = await openChild();
    await bedside.page.getByLabel("Measured by").selectOption("one person");
    await bedside.page.getByRole("button", { name: "How to measure: Length", exact: true }).click();
    const help = bedside.page.getByRole("region", { name: "How to measure: Length", exact: true });
    expect(readable(await help.innerText())).toContain("Crown against something upright");
    expect(await help.locator("svg").count()).toBe(2);
    await help.getByRole("button", { name: "Close" }).click();
    await help.waitFor({ state: "detached" });
    expect(await bedside.length.evaluate((field) => field === document.activeElement)).toBe(true);
  });

  test("a scale weight replaces the estimate, and its doses follow", async () => {
    const bedside = await openChild();
    await bedside.page.getByRole("textbox", { name: "Weight, scale" }).fill("31.5");
    await expect.poll(bedside.total).toBe("31.5 kg");
    expect(await bedside.card()).toContain("95 % range read from a scale");
    expect(await remarks(bedside)).toContain("Read from the scale.");
  });

  test.each([
    ["a conflict is named and left out", { "Weight, carer’s word": "80" }, "it was left out. Measure again."],
    ["two in conflict are both named", { "Arm, mid-upper": "170", Waist: "95" }, "one of the two is wrong"],
    ["an unlikely scale is named", { "Weight, scale": "80" }, "is unlikely for these measurements"],
    ["what the model has no use for is said", { Head: "53" }, "was given but not used"],
    [
      "without a length the weight goes by age",
      { Length: "", Age: "9 y" },
      "No length: the weight goes by age",
    ],
    ["without a girth the range is wide", { "Arm, mid-upper": "" }, "No circumference was given"],
    ["beyond the data is an extrapolation", { "Arm, mid-upper": "400" }, "the weight is an extrapolation"],
  ])("%s", async (_, texts, sentence) => {
    const bedside = await openChild();
    for (const [label, text] of Object.entries(texts)) {
      await bedside.page.getByLabel(label, { exact: true }).fill(text);
    }
    await expect.poll(() => remarks(bedside)).toContain(sentence);
    expect(await bedside.total()).toMatch(/kg$/);
  });

  test("a slip in a waist is named beside the fields with its correction, and the weight stands without it", async () => {
    const bedside = await openChild();
    const before = await bedside.total();
    await bedside.page.getByRole("textbox", { name: "Waist" }).fill("600");
    await bedside.page.getByRole("button", { name: "Take 600 mm (60 cm)" }).click();
    expect(await bedside.page.getByRole("textbox", { name: "Waist" }).inputValue()).toBe("60");
    expect(before).toMatch(/kg$/);
    await expect.poll(() => remarks(bedside)).toContain("waist circumference");
  });
});
