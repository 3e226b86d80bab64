import { createGenerator } from "../../src/bootstrap/index.ts";
import { trials } from "./interval-trials.ts";

/** Share of simulated studies whose nominal 95 % interval holds the truth, by interval, in %. */
export function simulateCoverage({ studies, seed }: { studies: number; seed: number }): Map<string, number> {
  const chance = createGenerator(seed);
  const held = new Map<string, number>();
  for (let study = 0; study < studies; study++)
    for (const trial of Object.values(trials))
      for (const [name, covered] of Object.entries(trial(chance)))
        held.set(name, (held.get(name) ?? 0) + Number(covered));
  return new Map(Array.from(held, ([name, count]) => [name, (100 * count) / studies]));
}
