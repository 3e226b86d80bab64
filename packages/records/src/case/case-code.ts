/** Letters and digits that are not taken for one another when read aloud or off a screen. */
const signs = "23456789ABCDEFGHJKMNPQRSTVWXYZ";

/**
 * What people call a case by: six signs in two groups, such as K47-2TP, made of bytes that chance gives.
 *
 * 30 signs to the power of 6 are 729 million codes; the id, not the code, tells cases apart. `bytes` at least 6, each 0 to 255. Throws a
 * `RangeError` on fewer.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { caseCode } from "@steelyard/records/case";
 *
 * assert.equal(caseCode([0, 1, 2, 3, 4, 5]), "234-567");
 * ```
 */
export function caseCode(bytes: ArrayLike<number>): string {
  if (bytes.length < 6)
    throw new RangeError(
      `Cannot make a case code as bytes must be at least 6: current value is ${bytes.length}`,
    );
  const code = Array.from({ length: 6 }, (_, i) => signs[(bytes[i] ?? 0) % signs.length]).join("");
  return `${code.slice(0, 3)}-${code.slice(3)}`;
}
