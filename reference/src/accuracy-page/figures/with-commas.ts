/** A count as people read it: 39,178. */
export function withCommas(count: number): string {
  return String(count).replace(/\B(?=(\d{3})+$)/g, ",");
}
