import { readFileSync } from "node:fs";
import { join } from "node:path";
import { readSettings, settingVariables } from "@steelyard/records/settings";
import { describe, expect, it } from "vitest";

const read = (text: string, env: Record<string, string> = {}) => readSettings({ text, env });

describe("readSettings()", () => {
  it("needs nothing: one SQLite file on this machine", () => {
    expect(read("")).toMatchObject({
      ok: true,
      value: {
        listen: { host: "127.0.0.1", port: 8317 },
        database: { type: "sqlite", file: "steelyard.sqlite" },
        site: "main",
        log: "info",
      },
    });
  });

  it("lets the environment win over the file", () => {
    const file = JSON.stringify({ listen: { host: "127.0.0.1", port: 1 }, site: "ward" });
    const env = { STEELYARD_PORT: "9000", STEELYARD_DATABASE: "postgres://db/steelyard" };
    expect(read(file, env)).toMatchObject({
      value: {
        listen: { host: "127.0.0.1", port: 9000 },
        site: "ward",
        database: { type: "postgres", url: "postgres://db/steelyard" },
      },
    });
  });

  it.each<[text: string, env: Record<string, string>, where: string, reason: RegExp]>([
    ["{", {}, "the settings file", /is no JSON/],
    ["[]", {}, "the settings file", /one JSON object/],
    ['{"listne":{}}', {}, "listne", /no setting/],
    ['{"listen":{"port":70000}}', {}, "listen.port", /0 to 65535/],
    ['{"database":{"type":"oracle"}}', {}, "database.type", /sqlite/],
    ['{"site":"Ward 1"}', {}, "site", /small letters/],
    ["", { STEELYARD_PORT: "80a" }, "STEELYARD_PORT", /number/],
    ["", { STEELYARD_INSECURE_HTTP: "yes" }, "STEELYARD_INSECURE_HTTP", /true or false/],
    ["", { STEELYARD_LOG: "loud" }, "STEELYARD_LOG", /debug, info/],
    ["", { STEELYARD_LEAST_FREE_BYTES: "1 GB" }, "STEELYARD_LEAST_FREE_BYTES", /number/],
    ["", { STEELYARD_TLS_KEY: "key.pem" }, "tls.certificateFile", /missing/],
    ["", { STEELYARD_HOST: "0.0.0.0" }, "listen.host", /other machines.*set tls/],
  ])("says what is wrong with %s %j", (text, env, where, reason) => {
    const result = read(text, env);
    expect(result.ok).toBe(false);
    if (result.ok) return;
    expect(result.error[0]).toEqual({ where, reason: expect.stringMatching(reason) });
  });

  it("takes a host beyond this machine behind TLS or a proxy", () => {
    for (const env of [
      { STEELYARD_TLS_CERTIFICATE: "c.pem", STEELYARD_TLS_KEY: "k.pem" },
      { STEELYARD_TRUST_PROXY: "10.0.0.1, 10.0.0.2" },
      { STEELYARD_INSECURE_HTTP: "true" },
    ]) {
      expect(read("", { ...env, STEELYARD_HOST: "0.0.0.0" }).ok).toBe(true);
    }
  });

  it("knows its variables by one prefix, and the page on operation names each", () => {
    expect(settingVariables.every((name) => name.startsWith("STEELYARD_"))).toBe(true);
    const page = readFileSync(join(import.meta.dirname, "../../../docs/operations.md"), "utf8");
    for (const name of settingVariables) expect(page).toContain(`\`${name}\``);
  });

  it.each([
    '{"__proto__":{"insecureHttp":true}}',
    '{"constructor":{"prototype":{"insecureHttp":true}}}',
    '{"listen":{"__proto__":{"host":"0.0.0.0"}}}',
    '{"limits":{"constructor":{"prototype":{"bodyBytes":1}}}}',
  ])("take nothing from a prototype, and give none: %s", (text) => {
    const read = readSettings({ text, env: {} });
    const clean = readSettings({ text: "", env: {} });
    // Refused, or as if it were not there.
    if (read.ok) expect(read).toEqual(clean);
    expect(({} as { insecureHttp?: unknown }).insecureHttp).toBeUndefined();
    expect(readSettings({ text: "", env: {} })).toEqual(clean);
  });

  it("take a public address as an origin and nothing more", () => {
    const read = (publicUrl: string) => readSettings({ text: JSON.stringify({ publicUrl }), env: {} }).ok;
    expect(["https://a.example", "https://a.example:8443", "http://localhost:8317/"].map(read)).toEqual([
      true,
      true,
      true,
    ]);
    const wrong = [
      "a.example",
      "https://a.example/page",
      "https://u:p@a.example",
      "javascript:x",
      "https://a b",
      "",
    ];
    expect(wrong.map(read)).toEqual(wrong.map(() => false));
  });
});
