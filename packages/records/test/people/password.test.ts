import { describe, expect, it } from "vitest";
import {
  hashPassword,
  needsRehash,
  passwordCost,
  verifyPassword,
} from "../../src/people/password/hash-password.ts";
import { judgePassword } from "../../src/people/password/judge-password.ts";

describe("verifyPassword()", () => {
  it("agrees with the printed example of RFC 7914, section 12", async () => {
    // scrypt("pleaseletmein", "SodiumChloride", N = 16384, r = 8, p = 1); its first 32 of 64 bytes are those of 32.
    const hash = "7023bdcb3afd7348461c06cd81fd38ebfda8fbba904f8e3ea9b543f6545da1f2";
    const text = (bytes: Buffer) => bytes.toString("base64url");
    const stored = `scrypt$14$8$1$${text(Buffer.from("SodiumChloride"))}$${text(Buffer.from(hash, "hex"))}`;
    expect(await verifyPassword("pleaseletmein", stored)).toBe(true);
    expect(await verifyPassword("Pleaseletmein", stored)).toBe(false);
  });

  it("takes what hashPassword() gives at the cost of today, with another salt every time", async () => {
    const [one, two] = await Promise.all([
      hashPassword("violet kettle", passwordCost),
      hashPassword("violet kettle", passwordCost),
    ]);
    expect(one).toMatch(/^scrypt\$15\$8\$3\$/);
    expect(one).not.toBe(two);
    expect(await verifyPassword("violet kettle", one)).toBe(true);
    expect(needsRehash(one, passwordCost)).toBe(false);
    expect(needsRehash(one, { ...passwordCost, log2N: 16 })).toBe(true);
    await expect(verifyPassword("x", "md5$1$2$3$a$b")).rejects.toThrow(TypeError);
  });

  it("checks two at a time, and sends away who comes when 64 wait", async () => {
    const cost = { log2N: 1, r: 1, p: 1 };
    const all = await Promise.allSettled(Array.from({ length: 80 }, () => hashPassword("x", cost)));
    expect(all.filter(({ status }) => status === "fulfilled")).toHaveLength(66);
    const away = all.find(({ status }) => status === "rejected");
    expect(away).toMatchObject({ reason: { statusCode: 503 } });
    expect(await hashPassword("x", cost)).toMatch(/^scrypt/);
  });
});

describe("judgePassword()", () => {
  const about = ["cara.hollis", "Cara Hollis", "resus"];
  it.each([
    ["violet ket", "too-short"],
    ["eleven sign", "too-short"],
    ["x".repeat(129), "too-long"],
    ["password1234", "too-common"],
    ["Password2026!", "too-common"],
    ["123456789012", "too-common"],
    ["qwertyuiop[]", "too-common"],
    ["abcabcabcabcabc", "too-common"],
    ["iloveyouiloveyou", "too-common"],
    ["my name is HOLLIS ok", "names-you"],
    ["resus room kettle", "names-you"],
  ])("%s is %s", (password, type) => {
    expect(judgePassword(password, { about })?.type).toBe(type);
  });
  it.each([
    "violet kettle sings",
    "zwölf graue Kähne",
    "dfgjkl3498sdf#lk",
    "雨の日は静かな猫と歩く朝",
    "🐢🦜🧵🪁🛶🧭🪨🌾🧊🕯️🎐🪗",
  ])("%s is good, whatever it is made of", (password) => {
    expect(judgePassword(password, { about })).toBeUndefined();
  });
});
