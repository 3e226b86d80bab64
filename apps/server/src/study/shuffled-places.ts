import { randomInt } from "node:crypto";

/** The places 0 to `length` less one in an order by chance that nobody can tell (Fisher and Yates). */
export function shuffledPlaces(length: number): readonly number[] {
  const places = Array.from({ length }, (_, place) => place);
  for (let i = length - 1; i > 0; i--) {
    const j = randomInt(i + 1);
    [places[i], places[j]] = [places[j] as number, places[i] as number];
  }
  return places;
}
