import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { answerCode, askCode, readAnswerCode, readAskCode } from "./reading-code.ts";

const tags = fc.integer({ min: 0, max: 1023 });
const readings = fc.record({
  lengthCm: fc.integer({ min: 200, max: 2500 }).map((mm) => mm / 10),
  armMm: fc.option(
    fc.integer({ min: 80, max: 1600 }).map((half) => half / 2),
    { nil: undefined },
  ),
});

test("what was written is read back, in small letters and with any spaces", () => {
  fc.assert(
    fc.property(tags, readings, (tag, reading) => {
      expect(readAskCode(askCode(tag).toLowerCase())).toBe(tag);
      const code = answerCode({ tag, ...reading });
      expect(code).toMatch(/^[0-9A-HJKMNP-TV-Z]{4} [0-9A-HJKMNP-TV-Z]{4}$/);
      const { lengthCm, armMm } = reading;
      expect(readAnswerCode(code.replace(" ", "-").toLowerCase(), tag)).toEqual({
        type: "reading",
        reading: armMm === undefined ? { lengthCm } : { lengthCm, armMm },
      });
    }),
    { seed: 8317 },
  );
});

describe("an answer is refused", () => {
  test("to another asking", () => {
    const code = answerCode({ tag: 7, lengthCm: 136, armMm: 190 });
    expect(readAnswerCode(code, 8)).toEqual({ type: "other-asking" });
  });

  test("with one wrong sign, or with two neighbours exchanged", () => {
    const signs = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
    const place = fc.integer({ min: 0, max: 7 });
    fc.assert(
      fc.property(tags, readings, place, fc.constantFrom(...signs), (tag, reading, at, sign) => {
        const code = answerCode({ tag, ...reading }).replace(" ", "");
        const wrong = `${code.slice(0, at)}${sign}${code.slice(at + 1)}`;
        if (wrong !== code) expect(readAnswerCode(wrong, tag)).toEqual({ type: "mistyped" });
        const i = Math.min(at, 6);
        const turned = `${code.slice(0, i)}${code[i + 1]}${code[i]}${code.slice(i + 2)}`;
        if (turned !== code) expect(readAnswerCode(turned, tag)).toEqual({ type: "mistyped" });
      }),
      { seed: 8317 },
    );
  });

  test.each(["", "12", "hello", "0000 000U", "https://example.org/"])("when it is %o", (text) => {
    expect(readAnswerCode(text, 0).type).toBe("mistyped");
  });
});

test("a letter O is taken for a nought and I and L for a one", () => {
  const code = answerCode({ tag: 0, lengthCm: 136, armMm: 190 });
  expect(code).toMatch(/0/);
  expect(readAnswerCode(code.replaceAll("0", "O").replaceAll("1", "l"), 0).type).toBe("reading");
});
