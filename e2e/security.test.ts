import { afterAll, beforeAll, expect, test } from "vitest";
import { openPlace, type Place } from "./support/bedside.ts";

let place: Place;
beforeAll(async () => {
  place = await openPlace();
});
afterAll(() => place.close());

test("the page itself never breaks the policy, and talks to nobody else", async () => {
  const { page, length, arm, lines, complaints, readyOffline } = await place.visit();
  const elsewhere: string[] = [];
  page.on("request", (request) => {
    if (!request.url().startsWith(place.url)) elsewhere.push(request.url());
  });
  await page.reload();
  await length.fill("136");
  await arm.fill("190");
  await lines.first().locator("summary").click();
  await readyOffline();
  expect(complaints).toEqual([]);
  expect(elsewhere).toEqual([]);
});

test("an inline script, an inline style and a foreign image are blocked", async () => {
  const { page } = await place.visit();
  const blocked = await page.evaluate(async () => {
    const directives: string[] = [];
    document.addEventListener("securitypolicyviolation", (event) =>
      directives.push(event.effectiveDirective),
    );
    const script = document.createElement("script");
    script.textContent = "globalThis.injected = true";
    document.head.append(script);
    document.body.insertAdjacentHTML(
      "beforeend",
      '<p style="color:red" onclick="globalThis.injected = true">x</p>',
    );
    document.body.insertAdjacentHTML("beforeend", '<img src="https://example.org/x.png">');
    (document.body.lastElementChild?.previousElementSibling as HTMLElement | null)?.click();
    await new Promise((resolve) => setTimeout(resolve, 300));
    return { directives: directives.sort(), injected: "injected" in globalThis };
  });
  expect(blocked.injected).toBe(false);
  expect(blocked.directives).toEqual(
    expect.arrayContaining(["img-src", "script-src-elem", "script-src-attr", "style-src-attr"]),
  );
});
