import {
  ageParts,
  type Band,
  bandAt,
  type ChildSize,
  cite,
  type LookupSource,
  type LookupStep,
} from "../lookup/index.ts";
import { FLEMING_HIGH_MONTHS, heartRates, respiratoryRates } from "./fleming-2011.ts";
import type { Centile, SignLine } from "./sign-line.ts";
import { signGap, signLine } from "./value-line.ts";

const SOURCES: readonly LookupSource[] = [
  { sourceId: "fleming2011", locator: "web table of centiles", verification: "memory" },
];

const TABLES: Readonly<Record<"heart-rate" | "respiratory-rate", readonly Band<readonly Centile[]>[]>> = {
  "heart-rate": heartRates,
  "respiratory-rate": respiratoryRates,
};

/** Centiles of a rate by age; past 18 years the last row, and marked so. */
export function rate(child: ChildSize, sign: "heart-rate" | "respiratory-rate"): SignLine {
  const bands = TABLES[sign];
  const { age } = child;
  if (age === undefined) return signGap({ sign }, { type: "needs", oneOf: ["age", "length"] }, SOURCES);
  const held = age.ageMonths >= FLEMING_HIGH_MONTHS;
  const last = bands.at(-1) as Band<readonly Centile[]>;
  const found = bandAt(bands, "age", held ? last.low : age.ageMonths);
  const centiles = found?.value ?? last.value;
  const { rests, working } = ageParts(age);
  const step: LookupStep =
    found === undefined || held
      ? { step: "held", by: "age", value: age.ageMonths, at: FLEMING_HIGH_MONTHS }
      : found.step;
  const at = (wanted: number): number => centiles.find(({ centile }) => centile === wanted)?.value as number;
  return signLine(
    { sign },
    child,
    [
      {
        value: { low: at(10), high: at(90) },
        unit: "/min",
        rests,
        working: [...working, step],
        sources: cite(SOURCES),
      },
    ],
    { centiles },
  );
}
