/** The middle of finite values, halfway between the two middle ones of an even number. Reorders the array: hand over a copy. */
export function medianInPlace(values: Float64Array): number {
  const half = values.length >> 1;
  const upper = select(values, half);
  if (values.length % 2 === 1) return upper;
  // What lies before the place of a selected value is no larger than it.
  let lower = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < half; i++) lower = Math.max(lower, values[i] as number);
  return (lower + upper) / 2;
}

/** Hoare's selection: the value at `k` when sorted, in linear time, the middle as the pivot so that sorted input is no worst case. */
function select(values: Float64Array, k: number): number {
  let low = 0;
  let high = values.length - 1;
  while (low < high) {
    const pivot = values[(low + high) >> 1] as number;
    let i = low;
    let j = high;
    while (i <= j) {
      while ((values[i] as number) < pivot) i++;
      while ((values[j] as number) > pivot) j--;
      if (i > j) break;
      const kept = values[i] as number;
      values[i++] = values[j] as number;
      values[j--] = kept;
    }
    if (k <= j) high = j;
    else if (k >= i) low = i;
    else break;
  }
  return values[k] as number;
}
