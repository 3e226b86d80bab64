/**
 * How long the whole sheet for one child takes, warm, beside a plain loop of the same multiplications and divisions.
 * Run: `node bench/sheet.ts`. Budget: 1 ms for a sheet of 130 uses. The ratio is what to compare; times hold for one
 * machine on one day.
 */
import { computeSheet, type Formulary, isInhaler, type SimpleRule } from "@steelyard/core/dosing";
import { kilograms } from "@steelyard/core/units";
import { draftFormulary } from "@steelyard/formulary";

const ROUNDS = 2000;
const WARM_UP = 500;

const uses = draftFormulary.medicines.reduce((sum, medicine) => sum + medicine.uses.length, 0);
const sheet = fastest((i) => {
  const kg = weightOf(i);
  const lines = computeSheet({
    formulary: draftFormulary,
    weights: {
      totalKg: kilograms(kg),
      idealKg: kilograms(kg * 0.95),
      adjustedKg: kilograms(kg * 0.97),
      leanKg: kilograms(kg * 0.8),
      cumulative: (at) => 1 / (1 + Math.exp(-(at / kg - 1) / 0.04)),
    },
  });
  return lines.length;
});
const factors = plainFactors(draftFormulary);
const plain = fastest((i) => {
  const kg = weightOf(i);
  let sum = 0;
  for (const { perKg, most, perMl } of factors) sum += Math.min(perKg * kg, most) / perMl;
  return sum;
});

console.log(`whole sheet, ${uses} uses: ${written(sheet.median)} median, ${written(sheet.best)} at best`);
console.log(
  `per use: ${written(sheet.best / uses)}; 130 uses at that pace: ${((130 * sheet.best) / uses).toFixed(2)} ms`,
);
console.log(
  `plain loop of ${factors.length} products: ${written(plain.best)} at best; ratio ${Math.round(sheet.best / plain.best)}`,
);

/** Another child each time, so that nothing could be kept from the last. */
function weightOf(i: number): number {
  return Math.round(30 + ((i * 7919) % 700)) / 10;
}

/** Milliseconds for one call, the middle and the fastest of many after a warm-up; what is not used would be optimised away. */
function fastest(run: (i: number) => number): { readonly median: number; readonly best: number } {
  let sink = 0;
  for (let i = 0; i < WARM_UP; i += 1) sink += run(i);
  const times = Array.from({ length: ROUNDS }, (_, i) => {
    const start = performance.now();
    for (let again = 0; again < 4; again += 1) sink += run(4 * i + again);
    return (performance.now() - start) / 4;
  }).sort((a, b) => a - b);
  if (!Number.isFinite(sink)) throw new Error("Cannot measure a sheet that is not finite");
  return { median: times[ROUNDS / 2] ?? Number.NaN, best: times[0] ?? Number.NaN };
}

interface Factors {
  readonly perKg: number;
  readonly most: number;
  readonly perMl: number;
}

function plainFactors({ medicines }: Formulary): Factors[] {
  return medicines.flatMap(({ uses: own, strengths }) =>
    own.flatMap(({ options, strengths: [strengthId] }) => {
      const rule = options[0]?.rule;
      const strength = strengths.find(({ id }) => id === strengthId);
      const perMl = strength === undefined || isInhaler(strength) ? 1 : strength.amountPerMl;
      return rule === undefined ? [] : [{ ...amounts(rule), perMl }];
    }),
  );
}

function amounts(rule: { readonly kind: string }): Pick<Factors, "perKg" | "most"> {
  if (rule.kind !== "per-kg") return { perKg: 1, most: Number.POSITIVE_INFINITY };
  const { amountPerKg, maximum } = rule as Extract<SimpleRule, { kind: "per-kg" }>;
  return { perKg: amountPerKg, most: maximum?.amount ?? Number.POSITIVE_INFINITY };
}

function written(ms: number): string {
  return ms < 0.1 ? `${(1000 * ms).toFixed(2)} microseconds` : `${ms.toFixed(2)} ms`;
}
