/** A column of numbers that grows as rows come. */
export class NumberStore {
  private values: Float64Array;
  private size = 0;

  constructor(expectedRows: number) {
    this.values = new Float64Array(Math.max(1024, expectedRows));
  }

  push(value: number): void {
    if (this.size === this.values.length) {
      const larger = new Float64Array(Math.ceil(1.5 * this.size));
      larger.set(this.values);
      this.values = larger;
    }
    this.values[this.size++] = value;
  }

  done(): Float64Array {
    return this.values.subarray(0, this.size);
  }
}

/** A column of codes that grows as rows come. */
export class CodeStore {
  private codes: Int32Array;
  private size = 0;

  constructor(expectedRows: number) {
    this.codes = new Int32Array(Math.max(1024, expectedRows));
  }

  push(code: number): void {
    if (this.size === this.codes.length) {
      const larger = new Int32Array(Math.ceil(1.5 * this.size));
      larger.set(this.codes);
      this.codes = larger;
    }
    this.codes[this.size++] = code;
  }

  done(): Int32Array {
    return this.codes.subarray(0, this.size);
  }
}
