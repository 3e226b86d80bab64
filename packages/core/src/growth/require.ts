/** Throws a `RangeError` that names the first value that is NaN or infinite. */
export function requireFinite(task: string, values: Readonly<Record<string, number | undefined>>): void {
  for (const name in values) {
    const value = values[name];
    if (value !== undefined && !Number.isFinite(value)) {
      throw new RangeError(`Cannot ${task} as ${name} must be a finite number: current value is ${value}`);
    }
  }
}

/** Throws a `RangeError` for anything but "m" and "f": callers without types must not get the wrong table. */
export function requireSex(task: string, sex: string): void {
  if (sex !== "m" && sex !== "f") {
    throw new RangeError(`Cannot ${task} as sex must be "m" or "f": current value is ${sex}`);
  }
}
