import { spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { createServer as createNetServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, test, vi } from "vitest";
import { readOptions } from "../src/read-options.ts";
import { serveRecords } from "../src/serve-records.ts";

describe("readOptions()", () => {
  test("has a default, takes PORT, and lets --port win", () => {
    expect(readOptions({ args: [], env: {} })).toEqual({ type: "serve", port: 8317 });
    expect(readOptions({ args: [], env: { PORT: "9000" } })).toEqual({ type: "serve", port: 9000 });
    expect(readOptions({ args: ["--port", "0"], env: { PORT: "9000" } })).toEqual({ type: "serve", port: 0 });
    expect(readOptions({ args: ["--help"], env: {} })).toEqual({ type: "help" });
  });

  test.each(["-1", "70000", "80a", "1e3", " "])("refuses the port “%s” by name", (port) => {
    expect(readOptions({ args: [], env: { PORT: port } })).toMatchObject({
      type: "wrong-usage",
      message: expect.stringContaining("PORT must be a whole number from 0 to 65535"),
    });
  });

  test("refuses an option it does not know", () => {
    expect(readOptions({ args: ["--prot", "1"], env: {} })).toMatchObject({
      type: "wrong-usage",
      message: expect.stringContaining("--prot"),
    });
  });
});

test("a taken port is said in words, with a way out", async () => {
  const blocker = createNetServer().listen(0, "127.0.0.1");
  await once(blocker, "listening");
  const { port } = blocker.address() as { port: number };
  const main = join(import.meta.dirname, "../src/main.ts");
  const child = spawn(process.execPath, [main, "--port", String(port)], {
    stdio: ["ignore", "pipe", "pipe"],
  });
  let said = "";
  child.stderr.on("data", (chunk) => {
    said += chunk;
  });
  const [code] = await once(child, "exit");
  blocker.close();
  expect(code).toBe(1);
  // Without a built page that is what it says instead; either way it names the next step.
  expect(said).toMatch(new RegExp(`Port ${port} is taken.*--port|The page is not built yet.*npm run build`));
});

test("the code of the first administrator is printed while nobody is there, opens the department once, and is printed no more", async () => {
  const folder = mkdtempSync(join(tmpdir(), "steelyard-first-run-"));
  writeFileSync(join(folder, "index.html"), "<!doctype html><title>t</title>");
  const env = { STEELYARD_DATABASE: join(folder, "records.sqlite"), STEELYARD_LOG: "silent" };
  /** One life of the server: what it printed, after `visit`. */
  const serve = async (visit: (address: string, printed: string) => Promise<void>): Promise<string> => {
    let printed = "";
    const write = vi.spyOn(process.stdout, "write").mockImplementation((chunk) => {
      printed += String(chunk);
      return true;
    });
    const status = serveRecords({ pageDir: folder, port: "0", env });
    await vi.waitFor(() => expect(printed).toContain("Steelyard records: http"), { timeout: 10_000 });
    await visit(/http:\/\/[\d.:]+/.exec(printed)?.[0] ?? "", printed);
    process.emit("SIGTERM");
    expect(await status).toBe(0);
    write.mockRestore();
    return printed;
  };
  const codeIn = (printed: string) => /code, within a day: (\S+)/.exec(printed)?.[1];
  await serve(async (address, printed) => {
    const code = codeIn(printed);
    expect(code).toMatch(/^([2-9A-Z]{5}-){5}[2-9A-Z]{5}$/);
    const person = { name: "Cara Hollis", login: "cara", password: "violet kettle sings at noon" };
    const set = await fetch(`${address}/api/set-up`, {
      method: "POST",
      headers: { "content-type": "application/json", origin: address },
      body: JSON.stringify({ code, ...person }),
    });
    expect([set.status, await set.json()]).toMatchObject([200, { person: { roles: ["administrator"] } }]);
  });
  const again = await serve(async (address) => {
    expect(await (await fetch(`${address}/api/session`)).json()).toEqual({ state: "signed-out" });
  });
  expect(codeIn(again)).toBeUndefined();
  rmSync(folder, { recursive: true });
}, 30_000);
