import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type Bedside, openPlace, type Place, readable } from "./support/bedside.ts";

let place: Place;
beforeAll(async () => {
  place = await openPlace();
});
afterAll(() => place.close());

/** Types into both fields and waits until the page has judged them. */
async function typed(lengthCm: string, armMm: string): Promise<Bedside> {
  const bedside = await place.visit();
  await bedside.length.fill(lengthCm);
  await bedside.arm.fill(armMm);
  await bedside.arm.blur();
  return bedside;
}

async function hasNoWeight(bedside: Bedside): Promise<void> {
  expect(await bedside.total()).toMatch(/^–/);
  expect(await bedside.lines.count()).toBe(0);
}

describe("bad input is answered with a sentence and never lost", () => {
  test.each([
    ["letters", "abc", "190", /"abc" is not a number: enter the length in cm/],
    ["negative", "-136", "190", /Length must be more than 0 cm/],
    ["a huge number", "1e9", "190", /cannot be right/],
    ["nine zeros", "1000000000", "190", /cannot be right/],
    ["two lengths", "136 140", "190", /"136 140" holds more than one number/],
    ["a range", "136-140", "190", /more than one number/],
    ["nothing measurable", "0", "190", /Length must be more than 0 cm/],
    ["a strange unit", "136 kg", "190", /"kg" is not a unit of length/],
    ["letters in the arm", "136", "fat", /"fat" is not a number: enter the arm/],
  ])("%s: %s / %s", async (_, lengthCm, armMm, sentence) => {
    const bedside = await typed(lengthCm, armMm);
    await expect.poll(bedside.said).toEqual([expect.stringMatching(sentence)]);
    await hasNoWeight(bedside);
    expect(await bedside.length.inputValue()).toBe(lengthCm);
    expect(await bedside.arm.inputValue()).toBe(armMm);
    const doubtful = armMm === "fat" ? bedside.arm : bedside.length;
    expect(await doubtful.getAttribute("aria-invalid")).toBe("true");
    const described = (await doubtful.getAttribute("aria-describedby"))?.split(" ")[0];
    expect(readable(await bedside.page.locator(`#${described}`).innerText())).toMatch(sentence);
  });

  test("empty fields get no scolding, only what to do", async () => {
    const bedside = await typed("", "");
    expect(await bedside.issues.count()).toBe(0);
    expect(await bedside.page.getByRole("heading", { name: "Two measurements first" }).isVisible()).toBe(
      true,
    );
    await hasNoWeight(bedside);
  });

  test("an arm alone says that length is needed", async () => {
    const bedside = await typed("", "190");
    await bedside.page.getByText("Length is needed").waitFor();
    await hasNoWeight(bedside);
  });

  test("a decimal comma is a decimal point", async () => {
    const comma = await typed("68,5", "13,5 cm");
    const point = await typed("68.5", "135");
    await expect.poll(comma.total).toMatch(/^\d/);
    expect(await comma.total()).toBe(await point.total());
    expect(await comma.length.inputValue()).toBe("68,5");
    expect(await comma.said()).toEqual([expect.stringContaining("was taken as 135 mm")]);
  });

  test.each([
    ["centimetres for millimetres", "136", "19", "Take 19 cm (190 mm)", "136", "190"],
    ["metres", "1,36", "190", "Take 1.36 m (136 cm)", "136", "190"],
    ["millimetres of length", "1360", "190", "Take 1,360 mm (136 cm)", "136", "190"],
    ["swapped fields", "190", "136", /^Take length 136 cm/, "136", "190"],
  ])(
    "%s: proposed as a button, taken only when pressed",
    async (_, lengthCm, armMm, name, thenLength, thenArm) => {
      const bedside = await typed(lengthCm, armMm);
      const button = bedside.page.getByRole("button", { name });
      await button.waitFor();
      await hasNoWeight(bedside);
      expect([await bedside.length.inputValue(), await bedside.arm.inputValue()]).toEqual([lengthCm, armMm]);
      await button.click();
      expect([await bedside.length.inputValue(), await bedside.arm.inputValue()]).toEqual([
        thenLength,
        thenArm,
      ]);
      await expect.poll(bedside.total).toMatch(/^28\.\d kg$/);
      expect(await bedside.issues.count()).toBe(0);
    },
  );

  test.each([
    ["inches", "53.5 in", "190", "135.89 cm"],
    ["metres with their unit", "1.36 m", "190", "136 cm"],
    ["feet and inches", `4 ft 5.5 in`, "190", "135.89 cm"],
  ])("%s are converted, and said to be", async (_, lengthCm, armMm, taken) => {
    const bedside = await typed(lengthCm, armMm);
    await bedside.page.getByText(`was taken as ${taken}`).waitFor();
    await expect.poll(bedside.total).toMatch(/^28\.\d kg$/);
    expect(await bedside.length.inputValue()).toBe(lengthCm);
  });

  test("a child out of the model's reach is refused with the range", async () => {
    const bedside = await typed("230", "300");
    // The range, and the number it may have been meant to be.
    await expect.poll(bedside.said).toContainEqual(expect.stringMatching(/\d+ to \d+ cm/));
    await hasNoWeight(bedside);
  });

  test("an age without a unit keeps the weight and offers the units", async () => {
    const bedside = await typed("136", "190");
    const before = await bedside.total();
    await bedside.page.getByRole("button", { name: "Add age" }).click();
    const age = bedside.page.getByLabel("Age", { exact: true });
    await age.fill("9");
    await bedside.page.getByRole("button", { name: "Take 9 years" }).waitFor();
    expect(await bedside.total()).toBe(before);
    await bedside.page.getByRole("button", { name: "Take 9 years" }).click();
    expect(await age.inputValue()).toBe("9 y");
    expect(await bedside.issues.count()).toBe(0);
  });
});
