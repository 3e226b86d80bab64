/**
 * Exact arithmetic for doses: a fraction in lowest terms with a positive denominator, both safe integers.
 *
 * Binary floating point cannot hold 0.1, so that three times 0.1 mg would not be 0.3 mg. Fractions can, and a
 * step that would leave the exact range throws instead of drifting.
 */
export interface Rational {
  readonly numerator: number;
  readonly denominator: number;
}

function greatestCommonDivisor(a: number, b: number): number {
  if (b === 1) return 1;
  let x = Math.abs(a);
  let y = b;
  while (y > maxInt32 || x > maxInt32) {
    if (y === 0) return x;
    [x, y] = [y, x % y];
  }
  // Whole numbers of 32 bits are divided several times as fast, and a sheet has thousands of these.
  let small = x | 0;
  let rest = y | 0;
  while (rest !== 0) {
    const next = (small % rest) | 0;
    small = rest;
    rest = next;
  }
  return small;
}

const maxInt32 = 2 ** 31 - 1;

function safe(value: number): number {
  if (!Number.isSafeInteger(value)) {
    throw new RangeError(`Cannot calculate exactly as terms must be within 2^53: current value is ${value}`);
  }
  return value;
}

/** numerator / denominator in lowest terms. Throws a `RangeError` unless both are integers and the denominator is positive. */
export function fraction(numerator: number, denominator: number): Rational {
  safe(numerator);
  if (safe(denominator) <= 0) {
    throw new RangeError(
      `Cannot make a fraction as denominator must be positive: current value is ${denominator}`,
    );
  }
  const divisor = greatestCommonDivisor(numerator, denominator);
  return { numerator: numerator / divisor, denominator: denominator / divisor };
}

/**
 * The number as it is written: 0.1 becomes one tenth.
 *
 * Takes the shortest decimal that names the number. Throws a `RangeError` where that has more digits than can
 * be held (about 15), or is not finite.
 */
export function exactly(value: number): Rational {
  if (Number.isSafeInteger(value)) return { numerator: value, denominator: 1 };
  // The quick way for what formularies hold: where the quotient is the very number, that decimal names it.
  const thousandths = Math.round(value * 1000);
  if (thousandths / 1000 === value && Math.abs(thousandths) < 1e12) return fraction(thousandths, 1000);
  const match = /^(-?\d+)(?:\.(\d+))?(?:e([+-]\d+))?$/.exec(String(value));
  if (match === null) {
    throw new RangeError(`Cannot take a number exactly as it must be finite: current value is ${value}`);
  }
  const [, whole = "", decimals = "", exponent = "0"] = match;
  const power = Number(exponent) - decimals.length;
  const digits = safe(Number(whole + decimals));
  return power >= 0 ? fraction(digits * 10 ** power, 1) : fraction(digits, 10 ** -power);
}

export function multiply(a: Rational, b: Rational): Rational {
  // Reduced crosswise first, so that no product is larger than its result needs.
  const left = greatestCommonDivisor(a.numerator, b.denominator);
  const right = greatestCommonDivisor(b.numerator, a.denominator);
  return {
    numerator: safe((a.numerator / left) * (b.numerator / right)),
    denominator: safe((a.denominator / right) * (b.denominator / left)),
  };
}

/** a / b. Throws a `RangeError` when b is not positive: nothing in dosing is divided by less. */
export function divide(a: Rational, b: Rational): Rational {
  if (b.numerator <= 0) {
    throw new RangeError(`Cannot divide as the divisor must be positive: current value is ${toNumber(b)}`);
  }
  return multiply(a, { numerator: b.denominator, denominator: b.numerator });
}

export function subtract(a: Rational, b: Rational): Rational {
  const divisor = greatestCommonDivisor(a.denominator, b.denominator);
  return fraction(
    safe(safe(a.numerator * (b.denominator / divisor)) - safe(b.numerator * (a.denominator / divisor))),
    safe(a.denominator * (b.denominator / divisor)),
  );
}

export function add(a: Rational, b: Rational): Rational {
  return subtract(a, { numerator: -b.numerator, denominator: b.denominator });
}

/** Below, at or above 0 as a is less than, equal to or more than b. */
export function compare(a: Rational, b: Rational): number {
  if (a.denominator === b.denominator) return a.numerator - b.numerator;
  const divisor = greatestCommonDivisor(a.denominator, b.denominator);
  return safe(a.numerator * (b.denominator / divisor)) - safe(b.numerator * (a.denominator / divisor));
}

/** The largest multiple of step that is not above value; both positive. */
export function floorToMultiple(value: Rational, step: Rational): Rational {
  const count = divide(value, step);
  return multiply(step, {
    numerator: (count.numerator - (count.numerator % count.denominator)) / count.denominator,
    denominator: 1,
  });
}

/** The multiple of step nearest to value, the lower one where two are as near; both positive. */
export function roundToMultiple(value: Rational, step: Rational): Rational {
  const below = floorToMultiple(value, step);
  const twice = multiply(subtract(value, below), { numerator: 2, denominator: 1 });
  return compare(twice, step) <= 0 ? below : ceilToMultiple(value, step);
}

/** The smallest multiple of step that is not below value; both positive. */
export function ceilToMultiple(value: Rational, step: Rational): Rational {
  const below = floorToMultiple(value, step);
  if (compare(below, value) === 0) return below;
  return add(below, step);
}

/** The nearest floating-point number: 3/10 gives the number that is written 0.3. */
export function toNumber(value: Rational): number {
  return value.numerator / value.denominator;
}
