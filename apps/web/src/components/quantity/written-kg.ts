/**
 * An estimated weight as it is written everywhere: to 0.1 kg, under 3 kg to 0.01 kg.
 *
 * The same as the weight that enters the working of a dose (`core/dosing`), so that the arithmetic can be repeated
 * from what stands on the screen.
 */
export function writtenKg(kg: number): number {
  const perKg = kg < 3 ? 100 : 10;
  return Math.round(kg * perKg) / perKg;
}
