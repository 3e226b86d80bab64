import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type Bedside, openPlace, type Place, readable, sizes } from "./support/bedside.ts";

let place: Place;
beforeAll(async () => {
  place = await openPlace();
});
afterAll(() => place.close());

async function openReader(bedside: Bedside): Promise<void> {
  await bedside.page.getByRole("link", { name: "Second reader" }).first().click();
  await bedside.page.getByRole("heading", { name: "Steelyard Second reader" }).waitFor();
}

async function readSecond({ page }: Bedside, lengthCm: string, armMm: string, done: string): Promise<void> {
  await page.getByRole("textbox", { name: "Length, second reading" }).fill(lengthCm);
  await page.getByRole("textbox", { name: "Arm, second reading" }).fill(armMm);
  await page.getByRole("button", { name: done }).click();
}

const main = async ({ page }: Bedside): Promise<string> => readable(await page.locator("main").innerText());

test("on this device: blind, agreement in mm and kg, both readings taken in", async () => {
  const bedside = await place.visit();
  const { page } = bedside;
  await bedside.length.fill("136");
  await bedside.arm.fill("190");
  await openReader(bedside);
  await page.getByRole("button", { name: "Hand over" }).click();
  expect(await main(bedside)).not.toMatch(/136|190|28\.\d/);
  await readSecond(bedside, "136.8", "194", "Done");
  const said = await main(bedside);
  expect(said).toMatch(/Length 136 cm 136\.8 cm 8 mm/);
  expect(said).toMatch(/Arm 190 mm 194 mm 4 mm/);
  expect(said).toMatch(/Weight 28\.\d kg 29\.\d kg 0\.\d+ kg \d\.?\d* %/);
  expect(said).toContain("Length: within the 1.7 cm");
  await page.getByRole("button", { name: "Take both readings in" }).click();
  await page.getByText("Two readings, 4 mm apart: 192 mm counts.").waitFor();
  expect(await bedside.length.inputValue()).toBe("136");
});

test("readings too far apart ask for a third one", async () => {
  const bedside = await place.visit();
  await bedside.length.fill("136");
  await bedside.arm.fill("190");
  await openReader(bedside);
  await bedside.page.getByRole("button", { name: "Hand over" }).click();
  await readSecond(bedside, "136", "202", "Done");
  expect(await main(bedside)).toContain(
    "Arm: further apart than the 8.7 mm that careful readings differ by.",
  );
  await bedside.page.getByRole("button", { name: "Take both in and read a third time" }).click();
  await bedside.page.getByRole("textbox", { name: "Arm, third reading" }).fill("191");
  await bedside.page.getByText("Three readings, 12 mm apart: 191 mm counts.").waitFor();
});

test("on another device, without a network: a code there and a code back; a wrong one is refused", async () => {
  const local = await openPlace();
  const first = await local.visit();
  const second = await local.visit({ viewport: sizes.tablet });
  await first.readyOffline();
  await second.readyOffline();
  await local.stopServer();
  await first.length.fill("136");
  await first.arm.fill("190");
  await openReader(first);
  const ask = (await first.page.locator(".reader__sign").innerText()).trim();
  expect(ask).toMatch(/^[0-9A-Z]{3}$/);

  await second.page.getByRole("link", { name: "Second reader" }).first().click();
  await second.page.getByLabel("Code for the other device").fill(ask.toLowerCase());
  await second.page.getByRole("button", { name: "Go on" }).click();
  await readSecond(second, "137", "188,5", "Make the code");
  const answer = (await second.page.locator(".reader__sign").innerText()).trim();
  expect(await second.page.getByRole("img", { name: "Show or read out this code" }).count()).toBe(1);

  const field = first.page.getByLabel("Code from the other device");
  await field.fill(`${answer.slice(0, -1)}${answer.endsWith("7") ? "8" : "7"}`);
  await first.page.getByRole("button", { name: "Compare" }).click();
  await first.page.getByText("That is no code of an answer.").waitFor();
  await field.fill(answer);
  await first.page.getByRole("button", { name: "Compare" }).click();
  await first.page.getByRole("heading", { name: "Agreement" }).waitFor();
  expect(await main(first)).toMatch(/Length 136 cm 137 cm 10 mm Arm 190 mm 188\.5 mm 1\.5 mm/);
  await local.close();
});

test("an answer for the child before is refused", async () => {
  const bedside = await place.visit();
  const other = await place.visit();
  await bedside.length.fill("136");
  await openReader(bedside);
  const ask = (await bedside.page.locator(".reader__sign").innerText()).trim();
  await other.page.goto(`${place.url}/#/reader/${ask}`);
  await readSecond(other, "136", "", "Make the code");
  const answer = (await other.page.locator(".reader__sign").innerText()).trim();
  await bedside.page.goBack();
  await bedside.page.getByRole("button", { name: "New child" }).click();
  await bedside.length.fill("82");
  await openReader(bedside);
  await bedside.page.getByLabel("Code from the other device").fill(answer);
  await bedside.page.getByRole("button", { name: "Compare" }).click();
  await bedside.page.getByText("That code answers another asking").waitFor();
});

test("the camera reads the codes of both devices, there and back, and passes over a code of something else", async () => {
  const folder = await mkdtemp(join(tmpdir(), "steelyard-"));
  const film = join(folder, "seen.mjpeg");
  const seeing = await openPlace({
    browserSwitches: [
      "--use-fake-device-for-media-stream",
      "--use-fake-ui-for-media-stream",
      `--use-file-for-fake-video-capture=${film}`,
    ],
  });
  /** Both devices see what the screen of the other shows: its picture, as a film of one frame. */
  const holdUp = async ({ page }: Bedside): Promise<void> => {
    const code = page.locator(".qr-code");
    await code.scrollIntoViewIfNeeded();
    await writeFile(film, await page.screenshot({ type: "jpeg", quality: 80 }));
  };
  const scan = (bedside: Bedside, nth: "first" | "last"): Promise<void> =>
    bedside.page.getByRole("button", { name: "Scan with the camera" })[nth]().click();
  try {
    const viewport = { width: 640, height: 480 };
    const first = await seeing.visit({ viewport });
    const second = await seeing.visit({ viewport });
    await first.length.fill("136");
    await first.arm.fill("190");
    await openReader(first);
    const ask = (await first.page.locator(".reader__sign").innerText()).trim();

    await second.page.getByRole("link", { name: "Second reader" }).first().click();
    await holdUp(first);
    await scan(second, "last");
    await second.page.getByRole("textbox", { name: "Length, second reading" }).waitFor();
    expect(new URL(second.page.url()).hash).toBe(`#/reader/${ask}`);

    // The first device sees its own asking at first, then the answer.
    await scan(first, "first");
    await first.page.locator("video").waitFor();
    await readSecond(second, "137", "188.5", "Make the code");
    // Off first: a camera that runs may meet the new film at any moment. It is read anew when the camera is switched on.
    expect(await first.page.getByRole("heading", { name: "Agreement" }).count()).toBe(0);
    await first.page.getByRole("button", { name: "Stop", exact: true }).click();
    await holdUp(second);
    await scan(first, "first");
    await first.page.getByRole("heading", { name: "Agreement" }).waitFor();
    expect(await main(first)).toMatch(/Length 136 cm 137 cm 10 mm Arm 190 mm 188\.5 mm 1\.5 mm/);
    expect([...first.complaints, ...second.complaints]).toEqual([]);
  } finally {
    await seeing.close();
    await rm(folder, { recursive: true });
  }
});

test("where the camera is refused, that is said and the code is typed", async () => {
  const bedside = await place.visit();
  await bedside.length.fill("136");
  await openReader(bedside);
  await bedside.page.getByRole("button", { name: "Scan with the camera" }).first().click();
  await bedside.page.getByText("The camera cannot be used. Type the code.").waitFor();
  expect(await bedside.page.locator("video").count()).toBe(0);
});
