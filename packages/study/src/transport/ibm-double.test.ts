import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { toIbmDouble } from "./build-transport.ts";
import { ibmDouble } from "./ibm-double.ts";

const bytesOf = (hex: string): Uint8Array =>
  Uint8Array.from(hex.split(" "), (byte) => Number.parseInt(byte, 16));

describe("ibmDouble()", () => {
  // Layout and missing codes: SAS TS-140 (source sas-ts140, memory). -118.625 is the worked example of textbooks on
  // the IBM format (memory); the largest is IBM's own, (1 - 16^-14) 16^63 = 7.237005577332262e75, the smallest 16^-65.
  it.each([
    { hex: "41 10 00 00 00 00 00 00", value: 1 },
    { hex: "c1 10 00 00 00 00 00 00", value: -1 },
    { hex: "41 20 00 00 00 00 00 00", value: 2 },
    { hex: "40 80 00 00 00 00 00 00", value: 0.5 },
    { hex: "42 64 00 00 00 00 00 00", value: 100 },
    { hex: "c2 76 a0 00 00 00 00 00", value: -118.625 },
    { hex: "41 32 43 f6 a8 88 5a 31", value: Math.PI },
    { hex: "40 19 99 99 99 99 99 9a", value: 0.1 },
    { hex: "00 00 00 00 00 00 00 00", value: 0 },
    { hex: "80 00 00 00 00 00 00 00", value: -0 },
    { hex: "7f ff ff ff ff ff ff ff", value: 7.237005577332262e75 },
    { hex: "00 10 00 00 00 00 00 00", value: 2 ** -260 },
  ])("reads $hex as $value", ({ hex, value }) => {
    expect(ibmDouble(bytesOf(hex))).toBe(value);
  });

  const codes = [0x2e, 0x5f, ...Array.from({ length: 26 }, (_, i) => 0x41 + i)];

  it.each([3, 4, 5, 6, 7, 8])("gives undefined for all 28 missing codes in %i bytes", (length) => {
    const read = codes.map((code) => ibmDouble(Uint8Array.from([code, ...new Array(length - 1).fill(0)])));
    expect(read).toEqual(codes.map(() => undefined));
  });

  it("takes a first byte that is a missing code for an exponent once a fraction follows", () => {
    expect(ibmDouble(bytesOf("41 10 00"))).toBe(1);
    expect(ibmDouble(bytesOf("5a 10 00"))).toBe(16 ** 25);
    expect(ibmDouble(bytesOf("2e 10 00"))).toBe(16 ** -19);
    // Neighbours of the codes are numbers with no fraction: 0.
    for (const head of ["2d", "2f", "40", "5b", "5e", "60"])
      expect(ibmDouble(bytesOf(`${head} 00 00`))).toBe(0);
  });

  it("reads the leading bytes of a number when it was stored short", () => {
    const stored = bytesOf("41 32 43 f6 a8 88 5a 31");
    for (let length = 3; length <= 8; length++) {
      const read = ibmDouble(stored.subarray(0, length)) as number;
      // The bytes cut off are at most one unit of the last one kept: 16 / 256^(length - 1).
      expect(read).toBeLessThanOrEqual(Math.PI);
      expect(Math.PI - read).toBeLessThan(16 * 256 ** (1 - length));
    }
  });

  it("gives back every number of IBM's range, exactly", () => {
    const numbers = fc
      .double({ min: -7e75, max: 7e75, noNaN: true })
      .filter((x) => x === 0 || Math.abs(x) > 1e-77);
    fc.assert(
      fc.property(numbers, (value) => {
        // 56 bits with up to three leading zeros hold all 53 of a double.
        expect(ibmDouble(toIbmDouble(value))).toBe(value === 0 ? 0 : value);
      }),
      { seed: 21, numRuns: 1000 },
    );
  });
});
