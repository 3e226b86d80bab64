import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { readable, sizes } from "./support/bedside.ts";
import { caseLog, downloaded, goTo } from "./support/case.ts";
import { type DepartmentPlace, openDepartmentPlace, type Visitor } from "./support/department.ts";
import { expectAccessible } from "./support/expect-accessible.ts";
import { seedCases } from "./support/seed-cases.ts";

const password = "violet kettle sings at noon";
let place: DepartmentPlace;
let admin: Visitor;
let writer: Visitor;
let first: Visitor;
let second: Visitor;
/** Of the device that is enrolled on the way. */
let token = "";

beforeAll(async () => {
  place = await openDepartmentPlace();
});
afterAll(() => place.close());

const press = (page: Page, name: string): Promise<void> =>
  page.getByRole("button", { name, exact: true }).click();

async function go(page: Page, screen: string): Promise<void> {
  const menu = page.getByRole("button", { name: "Menu", exact: true });
  if (await menu.isVisible()) await menu.click();
  await page.getByRole("navigation", { name: "Screens" }).getByRole("link", { name: screen }).click();
  await page.locator("#screen-name", { hasText: screen }).waitFor();
}

async function invite(name: string, roles: readonly string[]): Promise<string> {
  const { page } = admin;
  await page.getByLabel("Name", { exact: true }).fill(name);
  const form = page.getByRole("form", { name: "Invite somebody" });
  for (const role of ["clinician", "reviewer", "researcher", "administrator"])
    await form.getByLabel(role).setChecked(roles.includes(role));
  await press(page, "Make an invitation");
  await page.getByRole("heading", { name: `The invitation of ${name}` }).waitFor();
  return readable(await page.locator("[data-code]").innerText());
}

async function join(name: string, roles: readonly string[]): Promise<Visitor> {
  const code = await invite(name, roles);
  const visitor = await place.visit();
  const { page } = visitor;
  await page.getByRole("link", { name: "I have an invitation code" }).click();
  await page.getByLabel("Invitation code").fill(code);
  await page.getByLabel("Login").fill(name.split(" ")[0]?.toLowerCase() ?? "");
  await page.getByLabel("Password", { exact: true }).fill(password);
  await page.getByLabel("Password once more").fill(password);
  await press(page, "Join");
  await page.getByText(`${name} (`).waitFor();
  return visitor;
}

async function sign({ page }: Visitor): Promise<void> {
  await go(page, "Formulary");
  await page.locator("[data-version]").getByRole("link").first().click();
  await signHere(page);
}

async function signHere(page: Page): Promise<void> {
  await page.getByLabel("I am licensed to answer for this.").check();
  await page.getByLabel("Licence or registration").fill("Register of the test, 7");
  await page.getByLabel("Your password once more").fill(password);
  await press(page, "Sign");
  await page.getByText("You have signed this version.").waitFor();
}

/** A name beside the open case: sealed in the browser, opened again, and shut to another passphrase. */
async function keepName(page: Page): Promise<void> {
  const unlock = async (passphrase: string): Promise<void> => {
    await page.locator(".local-link summary").press("Enter");
    await page.getByLabel("Passphrase of the site").fill(passphrase);
    await press(page, "Unlock");
  };
  await unlock("larch seven otter");
  await page.getByText("Nothing is kept beside this case.").waitFor();
  await page.getByLabel("Name or number beside this case").last().fill("Invented Child, 4711");
  await page.getByLabel("Passphrase once more").fill("larch seven otter");
  const asked = page.waitForRequest((request) => request.method() === "POST");
  await press(page, "Seal and keep");
  const sent = (await asked).postData() ?? "";
  await page.getByText("Invented Child, 4711").waitFor();
  await expectAccessible(page);
  const { sealed } = JSON.parse(sent) as { readonly sealed: string };
  expect(sent).not.toMatch(/Invented|4711|otter/);
  expect(place.isInDatabase(sealed)).toBe(true);
  for (const plain of ["Invented Child", "4711", "larch seven otter"])
    expect(place.isInDatabase(plain), plain).toBe(false);
  await press(page, "Forget the passphrase");
  await page.getByText("Invented Child, 4711").waitFor({ state: "detached" });
  await unlock("another passphrase");
  await page.getByText("does not open the name").waitFor();
  await press(page, "Forget the passphrase");
}

// One department from its first start on: each step stands on the one before.
describe("a department", { shuffle: false }, () => {
  test("the code on the console makes the first administrator, who invites the others", async () => {
    admin = await place.visit();
    const { page } = admin;
    await page.getByLabel("Set-up code").fill("WRONG");
    await page.getByLabel("Your name").fill("Ada Quill");
    await page.getByLabel("Login").fill("ada");
    await page.getByLabel("Password", { exact: true }).fill(password);
    await page.getByLabel("Password once more").fill(password);
    await press(page, "Set up the department");
    await page.getByText("That code is not valid").waitFor();
    await page.getByLabel("Set-up code").fill(place.setUpCode);
    await press(page, "Set up the department");
    await page.getByText("Ada Quill (administrator), site resus").waitFor();
    await go(page, "People");
    writer = await join("Bo Marsh", ["clinician", "reviewer", "researcher"]);
    first = await join("Cleo Finch", ["reviewer"]);
    second = await join("Dee Hall", ["reviewer", "clinician"]);
    await expect.poll(() => page.locator("[data-person]").count()).toBe(4);
  });

  test("a session that ends in the middle of a change loses nothing that was typed", async () => {
    const { page } = writer;
    await go(page, "Formulary");
    await page.getByRole("link", { name: "Start from the draft" }).click();
    await page.getByLabel("Medicine", { exact: true }).selectOption("adrenaline");
    const dose = page.locator('[data-use="adrenaline/arrest"]').getByLabel("Dose", { exact: true });
    await dose.fill("ten");
    await page.getByText("must be a plain number such as 0.5").first().waitFor();
    await dose.fill("9");
    await expect
      .poll(async () => readable(await page.locator('[data-effect="adrenaline.arrest"]').innerText()))
      .toContain("200 micrograms, 2 mL → 180 micrograms, 1.8 mL");
    await page.getByLabel("Version", { exact: true }).fill("resus 1");
    await page.context().clearCookies();
    await press(page, "Keep it as a draft to be signed");
    await page.getByRole("heading", { name: "Your session is over" }).waitFor();
    await page.getByLabel("Password", { exact: true }).fill(password);
    await press(page, "Sign in");
    await page.getByRole("heading", { name: "Your session is over" }).waitFor({ state: "detached" });
    expect(await dose.inputValue()).toBe("9");
    await press(page, "Keep it as a draft to be signed");
    await page.getByText("It is kept.").waitFor();
    await page.getByRole("link", { name: "Open", exact: true }).click();
    await page.getByText("0 of 2 signatures needed").first().waitFor();
    await page.getByText("You wrote this version").waitFor();
  });

  test("a formulary with high-alert medicines comes into force with four eyes, and not before", async () => {
    await sign(first);
    await first.page.getByText("It lacks signatures").waitFor();
    await sign(second);
    await expectAccessible(second.page);
    await press(second.page, "Publish");
    await press(second.page, "Publish it");
    await second.page.getByText("This version is in force.").waitFor();
    await go(second.page, "Formulary");
    await second.page.getByText(/^In force: .*resus 1/).waitFor();
    expect(second.complaints).toEqual([]);
  });

  test("a case that a device had offline comes into the casebook, is weighed there later, and goes into chart and export", async () => {
    const { page } = admin;
    await go(page, "Devices");
    await page.getByLabel("Name of the device").fill("Tablet");
    await press(page, "Add the device");
    await page.getByRole("heading", { name: "Token of Tablet" }).waitFor();
    token = readable(await page.locator("[data-code]").innerText());

    const device = await place.visit({ viewport: sizes.phone });
    const tablet = device.page;
    await tablet.goto(place.url);
    await goTo(tablet, "This site");
    await tablet.getByLabel("Token of this device").fill(token);
    await press(tablet, "Link this device");
    await tablet.getByText("The server answers.").waitFor();
    await goTo(tablet, "Bedside");
    await tablet.context().setOffline(true);
    const log = caseLog({ page: tablet, lines: tablet.locator(".dose-line") });
    await log.measure("107", "171");
    await log.give("adrenaline.arrest");
    await tablet.context().setOffline(false);

    // What keeps Bedside for working offline keeps out of the way of the other page.
    const other = await tablet.context().newPage();
    await other.goto(place.url);
    await other.evaluate(() => navigator.serviceWorker.ready);
    await other.goto(`${place.url}/department`);
    await other.getByRole("button", { name: "Sign in", exact: true }).waitFor();
    await other.close();

    const clinician = second.page;
    await go(clinician, "Cases");
    await expect
      .poll(
        async () => {
          await press(clinician, "Show");
          await clinician.reload();
          await clinician.locator(".case-list, .casebook__empty").waitFor();
          return clinician.locator(".case-list a").count();
        },
        { timeout: 30_000 },
      )
      .toBe(1);
    await expectAccessible(clinician);
    await clinician.locator(".case-list a").click();
    await clinician.getByLabel("Weight, scale").fill("18.4");
    await press(clinician, "Keep the weight");
    await clinician.getByText("On the server.").waitFor();
    await clinician.locator('[data-event="later-weight"]', { hasText: "Dee Hall" }).waitFor();
    await keepName(clinician);
    await go(clinician, "Accuracy");
    await clinician.getByText(/^1 case: mean error/).waitFor();
    await clinician.getByText("Control limits are drawn from 20 cases on.").waitFor();
    await expectAccessible(clinician);

    await go(writer.page, "Export for a study");
    await press(writer.page, "Make the file");
    await writer.page.getByText(/holds 1 case\./).waitFor();
    await writer.page.getByText("Only 1 case").waitFor();
    const { text } = await downloaded(writer.page, "Save the file");
    expect(text.split(/\r?\n/).filter((line) => line !== "")).toHaveLength(2);
    expect(text).not.toContain("Dee Hall");
  });

  test("a calibration is fitted to the cases, kept, signed and published, and the one before it comes back", async () => {
    const { page } = second;
    await seedCases({ url: place.url, token, cases: 40 });
    for (const site of ["Resus", "Resus again"]) {
      await go(page, "Calibration");
      await page.getByLabel("Name of the site").fill(site);
      await press(page, "Fit");
      await page.getByText(/^Fitted to 4[01] children/).waitFor();
      await press(page, "Keep it as a draft to be signed");
      await page.getByText("It is kept.").waitFor();
      await page.getByRole("link", { name: "Open", exact: true }).click();
      await signHere(page);
      await press(page, "Publish");
      await press(page, "Publish it");
      await page.getByText("This version is in force.").waitFor();
    }
    await go(page, "Calibration");
    await page.getByText(/^In force: Resus again/).waitFor();
    await page.locator("[data-version]").getByRole("link").last().click();
    await press(page, "Roll back to this version");
    await press(page, "Roll back");
    await page.getByText("This version is in force.").waitFor();
    await go(page, "Calibration");
    await page.getByText(/^In force: Resus(?! again)/).waitFor();
    expect(second.complaints).toEqual([]);
  });

  test("the audit log tells of all this, is whole, and goes out as a table", async () => {
    const { page } = admin;
    await go(page, "Audit");
    await press(page, "Check the whole log");
    await page.getByText(/^Whole: \d+ entries/).waitFor();
    const { name, text } = await downloaded(page, "Save as CSV");
    expect(name).toMatch(/^audit-\d+\.csv$/);
    expect(text).toContain("Bo Marsh");
    const actions = text.split("\r\n").map((line) => line.split(",")[4]);
    expect(actions.filter((action) => action === "document.sign")).toHaveLength(4);
    expect(actions).toContain("document.publish");
    // A session elsewhere, which is ended below.
    const { page: elsewhere } = await place.visit();
    await elsewhere.getByLabel("Login").fill("ada");
    await elsewhere.getByLabel("Password", { exact: true }).fill(password);
    await press(elsewhere, "Sign in");
    await elsewhere.getByText("Ada Quill (administrator)").waitFor();
    await page.setViewportSize(sizes.phone);
    for (const screen of ["People", "Formulary", "Calibration", "Your account"]) {
      await go(page, screen);
      await page.locator("h2").first().waitFor();
      expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), screen).toBe(
        true,
      );
    }
    await expectAccessible(page);
    await page.getByLabel("Your password, to end a session").fill(password);
    await press(page, "End all others");
    await page.getByText("1 session is ended.").waitFor();
    await page.getByText("You are signed in nowhere else.").waitFor();
    expect(admin.complaints.filter((said) => !said.includes("403"))).toEqual([]);
  });
});
