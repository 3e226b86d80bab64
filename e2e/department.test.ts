import { randomUUID } from "node:crypto";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { draftFormulary } from "@steelyard/formulary";
import { writeFormulary } from "@steelyard/formulary/ownership";
import { readSettings } from "@steelyard/records/settings";
import { openStore, type Store } from "@steelyard/records/store";
import { createMetrics, createServer } from "@steelyard/server";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type Bedside, builtPage, openPlace, type Place, readable } from "./support/bedside.ts";
import { caseLog, goTo } from "./support/case.ts";
import { expectAccessible } from "./support/expect-accessible.ts";

const tokens = {
  tablet: "tablet-token-of-chance-with-forty-signs",
  phone: "phone-token-of-chance-with-forty-signs-",
};
let folder: string;
let store: Store;
let writer: string;
let reviewers: readonly string[];
let place: Place;
let plain: Place;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "steelyard-department-"));
  const read = readSettings({ text: '{"site": "resus"}', env: {} });
  if (!read.ok) throw new Error("The settings of the test are at fault");
  const settings = read.value;
  const clock = (): string => new Date().toISOString();
  const database = { type: "sqlite", file: join(folder, "records.sqlite") } as const;
  store = await openStore({ database, clock, newId: randomUUID });
  await store.addSite("resus");
  for (const [name, token] of Object.entries(tokens)) {
    await store.enrolDevice({ site: "resus", actor: "console", id: randomUUID(), name, token });
  }
  writer = await addPerson("Writer", "clinician");
  reviewers = [await addPerson("Reviewer 1", "reviewer"), await addPerson("Reviewer 2", "reviewer")];
  const records = { store, settings, metrics: createMetrics(), isStopping: () => false };
  place = await openPlace({ server: await createServer({ pageDir: builtPage, records }) });
  plain = await openPlace();
});
async function addPerson(name: string, roles: string): Promise<string> {
  const id = randomUUID();
  const at = new Date().toISOString();
  const person = {
    id,
    site: "resus",
    name,
    login: id,
    roles,
    state: "active" as const,
    created_at: at,
    joined_at: at,
  };
  await store.db
    .insertInto("person")
    .values({ ...person, last_sign_in_at: null })
    .execute();
  return `person:${id}`;
}

afterAll(async () => {
  await place.close();
  await plain.close();
  await store.close();
  rmSync(folder, { recursive: true, force: true });
});

const status = async ({ page }: Bedside): Promise<string> =>
  readable(await page.locator(".site__department").innerText());

async function link(bedside: Bedside, token: string): Promise<void> {
  const { page } = bedside;
  await goTo(page, "This site");
  await page.getByLabel("Token of this device").fill(token);
  await page.getByRole("button", { name: "Link this device" }).click();
}

test("a case made offline on one device appears in the casebook of another, and nothing is asked of a device without a token", async () => {
  const tablet = await place.visit();
  const asked: string[] = [];
  tablet.page.on("request", (request) => {
    if (request.url().includes("/api/")) asked.push(request.url());
  });
  const log = caseLog(tablet);
  await tablet.readyOffline();
  await tablet.page.context().setOffline(true);
  await log.measure("107", "171");
  await log.give("adrenaline.arrest");
  expect(asked).toEqual([]);
  await link(tablet, tokens.tablet);
  await expect.poll(() => status(tablet), { timeout: 20_000 }).toMatch(/does not answer.*\d events wait/);
  await tablet.page.context().setOffline(false);
  await expect
    .poll(() => status(tablet), { timeout: 20_000 })
    .toContain("The server answers. Every event of this device is on it.");
  await goTo(tablet.page, "Casebook");
  const code = readable(
    await tablet.page.locator(".case-list a b, .case-list a strong, .case-list a").first().innerText(),
  ).slice(0, 7);

  const phone = await place.visit();
  await link(phone, tokens.phone);
  await expect.poll(() => status(phone), { timeout: 20_000 }).toContain("The server answers.");
  await goTo(phone.page, "Casebook");
  await expect
    .poll(async () => readable(await phone.page.locator(".case-list").innerText()), { timeout: 20_000 })
    .toContain(code);
  // What the phone adds to the tablet's case comes back to the tablet.
  await phone.page.locator(".case-list a").first().click();
  await phone.page.getByLabel("Weight, scale").fill("18.4");
  await phone.page.getByLabel("Weight, scale").press("Enter");
  await phone.page.getByText(/Weighed later/).waitFor();
  await expect
    .poll(async () => (await store.readChanges({ site: "resus", since: 0, limit: 100 })).changes.length, {
      timeout: 20_000,
    })
    .toBeGreaterThan(4);
  const sentAgain: string[] = [];
  tablet.page.on("request", (request) => {
    if (request.url().endsWith("/api/sync/push")) sentAgain.push(request.postData() ?? "");
  });
  await tablet.page.reload();
  await expect
    .poll(async () => readable(await tablet.page.locator(".case-list").innerText()), { timeout: 20_000 })
    .toContain("weighed 18.4 kg");
  // What the server has acknowledged is not sent once more after a start.
  expect(sentAgain).toEqual([]);
  expect((await store.verifyAudit()).faults).toEqual([]);
  expect(
    [...tablet.complaints, ...phone.complaints].filter((said) => !said.includes("ERR_INTERNET_DISCONNECTED")),
  ).toEqual([]);
});

/** A formulary of the site's own invention, put in force by two who did not write it. */
async function publish(version: string): Promise<void> {
  const content = writeFormulary({ ...draftFormulary, version, title: "Formulary of an invented ward" });
  const added = await store.addDocument({
    site: "resus",
    actor: writer,
    kind: "formulary",
    label: version,
    content,
  });
  if (!added.ok) throw new Error(added.error.type);
  const { sha256 } = added.value;
  for (const actor of reviewers) {
    await store.signDocument({ site: "resus", actor, sha256, registration: "pharmacist" });
  }
  const published = await store.publishDocument({ site: "resus", actor: writer, sha256 });
  if (!published.ok) throw new Error(published.error.type);
}

test("the published formulary reaches a device between two children, so does its roll-back, and one that does not verify is refused", async () => {
  const bedside = await place.visit();
  const { page } = bedside;
  const log = caseLog(bedside);
  const footer = async (): Promise<string> => readable(await page.locator(".cautions").innerText());
  /** As when the network comes back: the device asks at once. */
  const ask = (): Promise<boolean> => page.evaluate(() => dispatchEvent(new Event("online")));
  const reaches = async (text: string): Promise<void> => {
    await ask();
    await expect.poll(footer, { timeout: 20_000 }).toContain(text);
  };
  await log.measure("107", "171");
  await publish("ward 1");
  await link(bedside, tokens.phone);
  await expect
    .poll(() => status(bedside), { timeout: 20_000 })
    .toContain("The formulary comes from the department.");
  await page.getByText("From the next child on: ward 1.").waitFor();
  expect(await page.getByLabel(/^Formulary file/).count()).toBe(0);
  await goTo(page, "Bedside");
  expect(await footer()).toContain("draft 0.1 (draft, not signed)");
  await page.getByRole("button", { name: "New child" }).click();
  await expect.poll(footer).toContain("formulary ward 1 (signed by Reviewer 1, pharmacist, on 20");
  await expect.poll(footer).toContain("; Reviewer 2, pharmacist, on 20");

  await publish("ward 2");
  await reaches("formulary ward 2 (signed");
  // Rolling back is publishing the earlier one again.
  await publish("ward 1");
  await reaches("formulary ward 1 (signed");

  await page.route("**/api/sync/documents?*", async (route) => {
    const reply = await route.fetch();
    await route.fulfill({
      response: reply,
      body: (await reply.text()).replace("invented ward", "other ward"),
    });
  });
  await publish("ward 3");
  await goTo(page, "This site");
  await ask();
  await page
    .getByText("The formulary that the department hands out is not used: it is not what was sent.")
    .waitFor();
  expect(await footer()).toContain("formulary ward 1 (signed");
  await page.unroute("**/api/sync/documents?*");
  await page.reload();
  await expect.poll(footer, { timeout: 20_000 }).toContain("formulary ward 3 (signed");
  await expectAccessible(page);

  await page.getByRole("button", { name: "Unlink, and use it no longer" }).click();
  await expect.poll(footer).toContain("draft 0.1 (draft, not signed)");
  await page.reload();
  await expect.poll(footer).toContain("draft 0.1 (draft, not signed)");
  await page.getByLabel(/^Formulary file/).waitFor();
});

test("a token that is none is refused at once, one that is not known by the server, and a page without a server says so", async () => {
  const bedside = await place.visit();
  await link(bedside, "short");
  await bedside.page.getByText("That is no token").waitFor();
  await bedside.page.getByLabel("Token of this device").fill("a".repeat(43));
  await bedside.page.getByRole("button", { name: "Link this device" }).click();
  await bedside.page.getByText("The server does not know this token").waitFor();
  await expectAccessible(bedside.page);
  await bedside.page.getByRole("button", { name: "Unlink this device" }).click();
  await bedside.page.getByLabel("Token of this device").waitFor();

  const alone = await plain.visit();
  await link(alone, tokens.tablet);
  await alone.page.getByText("There is no department server under this address.").waitFor();
});
