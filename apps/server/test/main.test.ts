import { spawn } from "node:child_process";
import { once } from "node:events";
import { createServer as createNetServer } from "node:net";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { readOptions } from "../src/read-options.ts";

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
