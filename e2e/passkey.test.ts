import { afterAll, beforeAll, expect, test } from "vitest";
import { type DepartmentPlace, openDepartmentPlace } from "./support/department.ts";

const password = "violet kettle sings at noon";
let place: DepartmentPlace;
beforeAll(async () => {
  place = await openDepartmentPlace();
});
afterAll(() => place.close());

// The browser's own WebAuthn with its virtual authenticator: nothing between page and server stands in for it.
test("a passkey is added, signs its owner in without a password, and is worth nothing once removed", async () => {
  const { page, complaints } = await place.visit();
  const devtools = await page.context().newCDPSession(page);
  await devtools.send("WebAuthn.enable");
  const { authenticatorId } = await devtools.send("WebAuthn.addVirtualAuthenticator", {
    options: {
      protocol: "ctap2",
      transport: "internal",
      hasResidentKey: true,
      hasUserVerification: true,
      isUserVerified: true,
      automaticPresenceSimulation: true,
    },
  });
  // Passkeys belong to a name, and an address of numbers is none.
  const address = `${place.url.replace("127.0.0.1", "localhost")}/department`;
  const press = (name: string) => page.getByRole("button", { name, exact: true }).click();
  const signInByPasskey = async () => {
    await press("Sign out");
    await press("Sign in with a passkey");
  };
  await page.goto(address);
  await page.getByLabel("Set-up code").fill(place.setUpCode);
  await page.getByLabel("Your name").fill("Ada Quill");
  await page.getByLabel("Login").fill("ada");
  await page.getByLabel("Password", { exact: true }).fill(password);
  await page.getByLabel("Password once more").fill(password);
  await press("Set up the department");
  await page.getByText("Ada Quill (administrator)").waitFor();
  await page.goto(`${address}#account`);
  await page.getByLabel("Name of the passkey").fill("Laptop");
  await press("Add a passkey");
  await page.getByText("The passkey Laptop is added.").waitFor();

  await signInByPasskey();
  await page.getByText("Ada Quill (administrator)").waitFor();
  await page.goto(`${address}#account`);
  await page.getByText("last used").waitFor();
  const { credentials } = await devtools.send("WebAuthn.getCredentials", { authenticatorId });
  expect(credentials).toMatchObject([{ rpId: "localhost", isResidentCredential: true }]);
  expect(complaints).toEqual([]);

  await press("Remove Laptop");
  await press("Remove it");
  await page.getByText("None yet.").waitFor();
  await signInByPasskey();
  await page.getByText("the passkey is not known here").waitFor();
});
