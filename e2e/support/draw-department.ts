import type { Page } from "playwright-core";
import { sizes } from "./bedside.ts";
import { openDepartmentPlace } from "./department.ts";
import { seedCases } from "./seed-cases.ts";

const password = "violet kettle sings at noon";

interface Picture {
  readonly name: string;
  readonly size: "phone" | "desk";
  readonly arrange: (page: Page) => Promise<void>;
}

const open = (hash: string, shown: string) => async (page: Page) => {
  await page.goto(page.url().replace(/#.*|$/, `#/${hash}`));
  await page.locator(shown).first().waitFor();
};

async function openCase(page: Page): Promise<void> {
  await open("cases", ".case-list a")(page);
  await page.locator(".case-list a").nth(3).click();
  await page.locator("[data-event]").first().waitFor();
}

async function fit(page: Page): Promise<void> {
  await open("calibration", "#fit")(page);
  await page.getByLabel("Name of the site").fill("Larch hill");
  await page.getByRole("button", { name: "Fit", exact: true }).click();
  await page.getByText(/^Fitted to/).waitFor();
}

async function changeDose(page: Page): Promise<void> {
  await open("formulary", "main a.button")(page);
  await page.getByRole("link", { name: "Start from the draft" }).click();
  await page.getByLabel("Medicine", { exact: true }).selectOption("adrenaline");
  const use = page.locator('[data-use="adrenaline/arrest"]');
  await use.getByLabel("Dose", { exact: true }).fill("9");
  await page.locator('[data-effect="adrenaline.arrest"]').waitFor();
  await use.scrollIntoViewIfNeeded();
}

const pictures: readonly Picture[] = [
  { name: "department-desk-cases", size: "desk", arrange: open("cases", ".case-list a") },
  {
    name: "department-desk-accuracy",
    size: "desk",
    arrange: open("accuracy", "main svg"),
  },
  { name: "department-desk-formulary", size: "desk", arrange: changeDose },
  { name: "department-desk-calibration", size: "desk", arrange: fit },
  { name: "department-phone-accuracy", size: "phone", arrange: open("accuracy", "main svg") },
  { name: "department-phone-case", size: "phone", arrange: openCase },
];

/** Pictures of the department, by a server of its own with 60 invented children. */
export async function drawDepartment(
  isWanted: (name: string) => boolean,
  keep: (page: Page, name: string) => Promise<void>,
): Promise<void> {
  const chosen = pictures.filter(({ name }) => isWanted(name));
  if (chosen.length === 0) return;
  const place = await openDepartmentPlace();
  const begun = await fetch(`${place.url}/api/set-up`, {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: JSON.stringify({ code: place.setUpCode, name: "Ada Quill", login: "ada", password }),
  });
  const { csrf } = (await begun.json()) as { readonly csrf: string };
  const cookie = begun.headers.getSetCookie()[0]?.split(";")[0] ?? "";
  const post = async (path: string, body: object): Promise<Readonly<Record<string, string>>> => {
    const headers = { "content-type": "application/json", "x-steelyard-csrf": csrf, cookie };
    const reply = await fetch(`${place.url}/api/${path}`, {
      method: "POST",
      headers,
      body: JSON.stringify(body),
    });
    return (await reply.json()) as Readonly<Record<string, string>>;
  };
  const { token = "" } = await post("devices", { name: "Tablet" });
  await seedCases({ url: place.url, token, cases: 60 });
  const roles = ["clinician", "reviewer"];
  const { code = "" } = await post("invitations", { name: "Dee Hall", roles });
  await post("join", { code, login: "dee", password });
  for (const { name, size, arrange } of chosen) {
    const { page } = await place.visit({
      viewport: sizes[size],
      reducedMotion: "reduce",
      colorScheme: "light",
    });
    await page.getByLabel("Login").fill("dee");
    await page.getByLabel("Password", { exact: true }).fill(password);
    await page.getByRole("button", { name: "Sign in", exact: true }).click();
    await page.getByText("Dee Hall (").waitFor();
    await arrange(page);
    await page.mouse.move(0, 0);
    await page.evaluate(() => document.fonts.ready);
    await page.waitForTimeout(200);
    await keep(page, name);
    await page.context().close();
  }
  await place.close();
}
