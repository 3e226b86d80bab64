/** A decimal as a whole number of 10^-places, for checks that share nothing with the arithmetic under test. */
interface Exact {
  readonly digits: bigint;
  readonly places: number;
}

function exact(value: number): Exact {
  const [mantissa = "0", exponent = "0"] = value.toExponential().split("e");
  const [whole = "0", decimals = ""] = mantissa.split(".");
  const places = decimals.length - Number(exponent);
  const digits = BigInt(whole + decimals);
  return places >= 0 ? { digits, places } : { digits: digits * 10n ** BigInt(-places), places: 0 };
}

/** Sign of the product of the first numbers less the product of the second ones, exactly as they are written. */
export function compareProducts(a: readonly number[], b: readonly number[]): number {
  const [left, right] = [a, b].map((values) =>
    values.map(exact).reduce((x, y) => ({ digits: x.digits * y.digits, places: x.places + y.places })),
  ) as [Exact, Exact];
  const difference = left.digits * 10n ** BigInt(right.places) - right.digits * 10n ** BigInt(left.places);
  return difference === 0n ? 0 : difference > 0n ? 1 : -1;
}
