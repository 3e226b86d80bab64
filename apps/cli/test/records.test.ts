import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { callSteelyard } from "./call-steelyard.ts";
import { type Folder, temporaryFolder } from "./run-steelyard.ts";

let folder: Folder;
beforeEach(() => {
  folder = temporaryFolder();
  vi.stubEnv("STEELYARD_DATABASE", `${folder.path}/records.sqlite`);
  vi.stubEnv("STEELYARD_SITE", "resus");
});
afterEach(() => {
  vi.unstubAllEnvs();
});

describe("steelyard device, person, audit, backup and restore", () => {
  it("enrol a device and show its token once, list it, revoke it, and log each of it", async () => {
    const added = await callSteelyard(["device", "add", "--name", "Resus tablet"]);
    expect([added.status, added.stdout]).toEqual([0, expect.stringMatching(/^[A-Za-z0-9_-]{43}\n$/)]);
    const id = /\(([0-9a-f-]{36})\)/.exec(added.stderr)?.[1] ?? "";
    const listed = await callSteelyard(["device", "list"]);
    expect(listed.stdout).toContain(`${id}  Resus tablet, enrolled`);
    expect(listed.stdout).not.toContain(added.stdout.trim());
    expect((await callSteelyard(["device", "revoke", id])).status).toBe(0);
    expect((await callSteelyard(["device", "list"])).stdout).toContain("revoked");
    const again = await callSteelyard(["device", "revoke", id]);
    expect([again.status, again.stderr]).toEqual([1, expect.stringContaining("There is no device")]);
    const log = await callSteelyard(["audit", "list"]);
    expect(log.stdout).toMatch(/2 {2}.* {2}console {2}device\.revoke/);
    const verified = await callSteelyard(["audit", "verify"]);
    expect([verified.status, verified.stdout]).toEqual([
      0,
      expect.stringMatching(/^resus: 2 entries, last hash /),
    ]);
  });

  it("invite a person, list and reset them, and print each code once", async () => {
    const role = ["--role", "administrator,clinician"];
    const invited = await callSteelyard(["person", "invite", "--name", "Cara Hollis", ...role]);
    const code = /^([2-9A-Z]{5}-){5}[2-9A-Z]{5}\n$/;
    expect([invited.status, invited.stdout]).toEqual([0, expect.stringMatching(code)]);
    const listed = (await callSteelyard(["person", "list"])).stdout;
    expect(listed).toMatch(/^[0-9a-f-]{36} {2}Cara Hollis, administrator and clinician, invited\n$/);
    const id = listed.slice(0, 36);
    const reset = await callSteelyard(["person", "reset", id]);
    expect([reset.status, reset.stdout]).toEqual([0, expect.stringMatching(code)]);
    expect(reset.stdout).not.toBe(invited.stdout);
    expect((await callSteelyard(["person", "unlock", id])).status).toBe(0);
    const nobody = await callSteelyard(["person", "unlock", "x"]);
    expect([nobody.status, nobody.stderr]).toEqual([1, expect.stringContaining("There is no x at resus")]);
    const wrong = await callSteelyard(["person", "invite", "--name", "X", "--role", "surgeon"]);
    expect([wrong.status, wrong.stderr]).toEqual([2, expect.stringContaining("It must be of clinician")]);
    const log = (await callSteelyard(["audit", "list"])).stdout;
    for (const action of ["invite", "reset", "unlock"]) expect(log).toContain(`console  person.${action}`);
    expect((await callSteelyard(["audit", "verify"])).status).toBe(0);
  });

  it("write a backup once, restore it into an empty database, and refuse what is none", async () => {
    await callSteelyard(["device", "add", "--name", "Resus tablet"]);
    const file = `${folder.path}/records.jsonl`;
    const written = await callSteelyard(["backup", "-o", file]);
    expect([written.status, written.stderr]).toEqual([0, expect.stringContaining("Wrote 3 rows")]);
    expect((await callSteelyard(["backup", "-o", file])).stderr).toContain("is there already");
    const full = await callSteelyard(["restore", file]);
    expect([full.status, full.stderr]).toEqual([
      1,
      expect.stringContaining("There are records in the database"),
    ]);

    vi.stubEnv("STEELYARD_DATABASE", `${folder.path}/other.sqlite`);
    const cut = folder.write("cut.jsonl", folder.read("records.jsonl").split("\n").slice(0, 2).join("\n"));
    expect((await callSteelyard(["restore", cut])).stderr).toContain("damaged or cut off");
    const none = folder.write("none.txt", "no backup\n");
    expect((await callSteelyard(["restore", none])).stderr).toContain("is no backup");
    expect((await callSteelyard(["restore", `${folder.path}/missing`])).stderr).toContain("Cannot read");
    const restored = await callSteelyard(["restore", file]);
    expect([restored.status, restored.stderr]).toEqual([0, expect.stringContaining("its audit log holds")]);
    expect((await callSteelyard(["device", "list"])).stdout).toContain("Resus tablet");
  });

  it("say which setting is wrong, and that a database cannot be opened", async () => {
    vi.stubEnv("STEELYARD_SITE", "Not A Site");
    const wrong = await callSteelyard(["device", "list"]);
    expect([wrong.status, wrong.stderr]).toEqual([
      2,
      expect.stringContaining("STEELYARD_SITE must be small letters"),
    ]);
    vi.stubEnv("STEELYARD_SITE", "resus");
    vi.stubEnv("STEELYARD_DATABASE", `${folder.path}/no/such/folder/records.sqlite`);
    const unopened = await callSteelyard(["audit", "verify"]);
    expect([unopened.status, unopened.stderr]).toEqual([
      1,
      expect.stringContaining("Cannot open the records"),
    ]);
    expect((await callSteelyard(["device", "add", "--name", " "])).status).toBe(2);
  });
});
