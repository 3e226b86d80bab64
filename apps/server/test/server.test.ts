import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { request } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { FastifyInstance } from "fastify";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { createServer } from "../src/index.ts";

const root = mkdtempSync(join(tmpdir(), "steelyard-server-"));
const pageDir = join(root, "dist");
let server: FastifyInstance;

beforeAll(async () => {
  mkdirSync(join(pageDir, "assets"), { recursive: true });
  writeFileSync(join(root, "secret.txt"), "outside the page");
  writeFileSync(join(pageDir, ".hidden"), "hidden");
  writeFileSync(join(pageDir, "index.html"), "<!doctype html><title>t</title>");
  writeFileSync(join(pageDir, "sw.js"), "self;");
  writeFileSync(join(pageDir, "manifest.webmanifest"), "{}");
  writeFileSync(join(pageDir, "assets/index-AbC123.js"), "export {};");
  writeFileSync(join(pageDir, "assets/index-AbC123.css"), "a{}");
  writeFileSync(join(pageDir, "assets/face-AbC123.woff2"), "x");
  writeFileSync(join(pageDir, "icon.svg"), "<svg/>");
  server = await createServer({ pageDir });
});
afterAll(async () => {
  await server.close();
  rmSync(root, { recursive: true });
});

describe("what is served", () => {
  test.each([
    ["/", "text/html"],
    ["/index.html", "text/html"],
    ["/sw.js", "javascript"],
    ["/manifest.webmanifest", "application/manifest+json"],
    ["/assets/index-AbC123.js", "javascript"],
    ["/assets/index-AbC123.css", "text/css"],
    ["/assets/face-AbC123.woff2", "font/woff2"],
    ["/icon.svg", "image/svg+xml"],
  ])("%s is %s", async (url, type) => {
    const reply = await server.inject(url);
    expect(reply.statusCode).toBe(200);
    expect(reply.headers["content-type"]).toMatch(type);
    expect(reply.headers["x-content-type-options"]).toBe("nosniff");
  });

  test("HEAD has the headers and no body", async () => {
    const reply = await server.inject({ method: "HEAD", url: "/" });
    expect(reply.statusCode).toBe(200);
    expect(reply.headers["content-type"]).toMatch("text/html");
    expect(reply.body).toBe("");
  });

  test.each(["/nothing", "/assets/", "/assets", "/.hidden", "/assets/gone-1.js"])(
    "%s is 404",
    async (url) => {
      const reply = await server.inject(url);
      expect(reply.statusCode).toBe(404);
      expect(reply.headers["cache-control"]).toBe("no-cache");
      expect(reply.headers["content-security-policy"]).toContain("default-src 'none'");
    },
  );

  test.each(["POST", "PUT", "DELETE", "PATCH", "OPTIONS"] as const)(
    "%s is 405 and says what is allowed",
    async (method) => {
      for (const url of ["/", "/nothing"]) {
        const reply = await server.inject({ method, url });
        expect(reply.statusCode).toBe(405);
        expect(reply.headers.allow).toBe("GET, HEAD");
      }
    },
  );
});

describe("what is not served", () => {
  // Sent raw over a socket: `inject` and fetch would resolve the dots before the server sees them.
  const raw = (path: string): Promise<{ status: number; body: string }> =>
    new Promise((resolve, reject) => {
      const { port } = server.addresses()[0] as { port: number };
      const call = request({ host: "127.0.0.1", port, path }, (reply) => {
        let body = "";
        reply.on("data", (chunk) => {
          body += chunk;
        });
        reply.on("end", () => resolve({ status: reply.statusCode ?? 0, body }));
      });
      call.on("error", reject);
      call.end();
    });

  test("no path leads out of the page's folder", async () => {
    await server.listen({ host: "127.0.0.1", port: 0 });
    const inside = await raw("/icon.svg");
    expect(inside).toEqual({ status: 200, body: "<svg/>" });
    for (const path of [
      "/../secret.txt",
      "/assets/../../secret.txt",
      "/%2e%2e/secret.txt",
      "/..%2fsecret.txt",
      "/assets/..%2f..%2fsecret.txt",
      "/..%5csecret.txt",
      "/%252e%252e/secret.txt",
      "//../secret.txt",
      "/%00",
      "/%",
    ]) {
      const reply = await raw(path);
      expect(reply.status, path).toBeGreaterThanOrEqual(400);
      expect(reply.status, path).toBeLessThan(500);
      expect(reply.body, path).not.toContain("outside the page");
    }
  });
});

describe("caching", () => {
  test.each(["/assets/index-AbC123.js", "/assets/index-AbC123.css", "/assets/face-AbC123.woff2"])(
    "%s may be kept for ever",
    async (url) => {
      const reply = await server.inject(url);
      expect(reply.headers["cache-control"]).toBe("public, max-age=31536000, immutable");
    },
  );

  test.each(["/", "/index.html", "/sw.js", "/manifest.webmanifest", "/icon.svg"])(
    "%s is asked for again",
    async (url) => {
      const reply = await server.inject(url);
      expect(reply.headers["cache-control"]).toBe("no-cache");
      const again = await server.inject({ url, headers: { "if-none-match": reply.headers.etag } });
      expect(again.statusCode).toBe(304);
    },
  );
});

describe("security headers", () => {
  test("the policy allows own files only, and nothing inline", async () => {
    const policy = String((await server.inject("/")).headers["content-security-policy"]);
    const directives = Object.fromEntries(
      policy.split(";").map((part) => [part.trim().split(" ")[0], part.trim().split(" ").slice(1)]),
    );
    expect(directives["default-src"]).toEqual(["'none'"]);
    expect(directives["script-src"]).toEqual(["'self'"]);
    expect(directives["style-src"]).toEqual(["'self'"]);
    expect(directives["frame-ancestors"]).toEqual(["'none'"]);
    expect(policy).not.toContain("unsafe");
    expect(policy).not.toMatch(/https?:|\*|data:/);
  });

  test("no framing, no referrer, no device powers, no HTTPS demand", async () => {
    const { headers } = await server.inject("/");
    expect(headers["x-frame-options"]).toBe("DENY");
    expect(headers["referrer-policy"]).toBe("no-referrer");
    expect(headers["permissions-policy"]).toContain("camera=(self)");
    expect(headers["strict-transport-security"]).toBeUndefined();
  });
});
