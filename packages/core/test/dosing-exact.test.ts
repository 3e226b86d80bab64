import {
  computeSheet,
  type DoseLine,
  type DoseUnit,
  type Formulary,
  isInhaler,
  type PerKgRule,
  type Rule,
  type Strength,
  type WorkingStep,
} from "@steelyard/core/dosing";
import { kilograms } from "@steelyard/core/units";
import { beforeAll, describe, expect, it } from "vitest";
import {
  type BigFraction,
  big,
  by,
  isMultiple,
  isNumber,
  order,
  plus,
  times,
} from "./support/big-fraction.ts";
import { oneUseFormulary, strengthOf } from "./support/one-use-formulary.ts";

/** 100,000 random rules and weights, the same each time. */
const FORMULARIES = 50;
const USES = 200;
const CHILDREN = 10;

/** As the fluid of a burn runs; anything but a fluid passes them over. */
const HALVES = [
  { share: 0.5, overH: 8 },
  { share: 0.5, overH: 16 },
];

const NANOGRAMS: Partial<Record<DoseUnit, bigint>> = {
  g: 1_000_000_000n,
  mg: 1_000_000n,
  microgram: 1000n,
  nanogram: 1n,
};

/** mulberry32: small, and good enough to spread test cases. */
function randomOf(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** The same amount in another mass unit. */
function inUnit(amount: number, from: DoseUnit, to: DoseUnit): BigFraction {
  if (from === to) return big(amount);
  const [over, under] = [NANOGRAMS[from], NANOGRAMS[to]];
  if (over === undefined || under === undefined) throw new Error(`${from} is no mass`);
  return times(big(amount), { over, under });
}

interface Case {
  readonly rule: Rule;
  readonly strength: Strength;
  readonly mass: DoseUnit;
}

function randomCase(random: () => number): Case {
  const pick = <T>(items: readonly T[]): T => items[Math.floor(random() * items.length)] as T;
  const amount = (): number => Math.round(1 + random() * 9999) / pick([1, 10, 100, 1000]);
  const masses = ["mg", "microgram"] as const;
  const unit = pick(masses);
  const mass = pick(masses);
  const strength = strengthOf(amount(), mass);
  const kind = random();
  if (kind < 0.1) {
    return {
      strength,
      mass,
      rule: {
        kind: "tiered-rate",
        unit: "mL",
        per: "h",
        basis: "total",
        tiers: [
          { upToKg: 10, perKg: pick([3, 4, 4.2]) },
          { upToKg: 20, perKg: 2 },
          { perKg: pick([1, 0.8]) },
        ],
        ...(random() < 0.5 && { maximum: { amount: 90, unit: "mL" } }),
      },
    };
  }
  if (kind < 0.35) {
    const start = Math.round(1 + random() * 500) / 100;
    return {
      strength,
      mass,
      rule: {
        kind: "infusion",
        unit,
        per: pick(["min", "h"]),
        basis: "total",
        startPerKg: start,
        lowPerKg: start / 2 < 0.01 ? 0.01 : Math.round(50 * start) / 100,
        highPerKg: 4 * start,
      },
    };
  }
  if (kind < 0.4) {
    return {
      strength,
      mass,
      rule: {
        kind: "per-kg",
        amountPerKg: pick([2, 3, 3.5, 4]),
        unit: "mL",
        basis: "total",
        perBurnPercent: { fromPercent: 10 },
      },
    };
  }
  const rule: PerKgRule = {
    kind: "per-kg",
    amountPerKg: amount(),
    unit,
    basis: "total",
    ...(random() < 0.6 && { maximum: { amount: Math.round(10 + random() * 5e4), unit: mass } }),
    ...(random() < 0.2 && { minimum: { amount: Math.round(1 + random() * 9), unit: mass } }),
  };
  if (kind > 0.9) {
    const { id, container, citations } = strength;
    const inhaler = { id, container, citations, amountPerPuff: amount(), unit: mass, containerPuffs: 200 };
    return { strength: inhaler, mass, rule };
  }
  return { strength, mass, rule };
}

/** One formulary of many uses, `test.u-0` and so on. */
function formularyOf(cases: readonly Case[]): Formulary {
  const [first] = cases;
  if (first === undefined) throw new Error("no case");
  const single = oneUseFormulary({ rule: first.rule });
  const [medicine] = single.medicines;
  const [use] = medicine?.uses ?? [];
  if (medicine === undefined || use === undefined) throw new Error("no use");
  const { citations } = use.administration;
  return {
    ...single,
    medicines: [
      {
        ...medicine,
        strengths: cases.map(({ strength }, index) => ({ ...strength, id: `s-${index}` })),
        uses: cases.map(({ rule, mass }, index) => ({
          ...use,
          id: `u-${index}`,
          options: [{ id: "only", title: "only", rule, citations }],
          strengths: [`s-${index}`],
          administration: { ...use.administration, portions: HALVES },
          ...(rule.kind === "infusion" && {
            preparations: [
              {
                kind: "fixed" as const,
                id: "f",
                amount: 3 + index,
                unit: mass,
                totalMl: 50,
                diluent: "water",
                lowKg: 0,
                citations,
              },
            ],
          }),
        })),
      },
    ],
  };
}

function step<S extends WorkingStep["step"]>(line: DoseLine, name: S): Extract<WorkingStep, { step: S }>[] {
  return line.working.filter((each): each is Extract<WorkingStep, { step: S }> => each.step === name);
}

/** What differs from exact arithmetic; nothing where all agrees. */
function faultsOf(
  line: DoseLine,
  { rule, strength }: Case,
  { kg: kgNumber, burnPercent }: { readonly kg: number; readonly burnPercent: number },
): string[] {
  const kg = big(kgNumber);
  if (rule.kind === "tiered-rate") return tierFaults(line, rule, kg);
  if (rule.kind === "infusion") return infusionFaults(line, rule, kg);
  if (rule.kind !== "per-kg") return ["kind"];
  if (rule.perBurnPercent) return burnFaults(line, times(times(big(rule.amountPerKg), kg), big(burnPercent)));
  const faults: string[] = [];
  const { unit } = rule;
  let asked = times(big(rule.amountPerKg), kg);
  const [perKg] = step(line, "per-kg");
  if (perKg === undefined || !isNumber(perKg.result.amount, asked)) faults.push("per-kg");
  const maximum = rule.maximum && inUnit(rule.maximum.amount, rule.maximum.unit, unit);
  const minimum = rule.minimum && inUnit(rule.minimum.amount, rule.minimum.unit, unit);
  if (maximum && order(asked, maximum) > 0) asked = maximum;
  else if (minimum && order(asked, minimum) < 0) asked = minimum;
  const isLimited = order(asked, times(big(rule.amountPerKg), kg)) !== 0;
  if (isLimited !== (line.limitedBy !== undefined)) faults.push("limit");
  if (isInhaler(strength)) {
    const perPuff = inUnit(strength.amountPerPuff, strength.unit, unit);
    return [...faults, ...puffFaults(line, { asked, maximum, perPuff })];
  }
  const [volume] = step(line, "volume");
  const perMl = inUnit(strength.amountPerMl, strength.unit, unit);
  if (volume === undefined || !isNumber(volume.ml, by(asked, perMl))) faults.push("volume");
  if (line.volume !== undefined) {
    const { dilution } = line.volume;
    const drawn = big(line.volume.ml);
    const inSyringe = dilution
      ? by(times(perMl, big(dilution.takeMl)), big(dilution.takeMl + dilution.addMl))
      : perMl;
    const given = times(drawn, inSyringe);
    if (!isNumber(line.dose.amount, given)) faults.push("drawn up");
    if (maximum && order(given, maximum) > 0) faults.push("past the maximum");
    const error = by(given, asked);
    if (order(error, big(1.1)) > 0 || order(error, big(0.9)) < 0) faults.push("rounding");
    for (const { markMl } of step(line, "rounding")) if (!isMultiple(drawn, big(markMl))) faults.push("mark");
  } else if (!isNumber(line.dose.amount, asked)) faults.push("exact dose");
  return faults;
}

function burnFaults(line: DoseLine, asked: BigFraction): string[] {
  const faults: string[] = [];
  const [burnt] = step(line, "per-kg-burnt");
  if (burnt === undefined || !isNumber(burnt.result.amount, asked)) faults.push("per kg and percent");
  const [rounded] = step(line, "rounding");
  const given = big(line.dose.amount);
  if (rounded && !isMultiple(given, big(rounded.markMl))) faults.push("mark");
  const [first, second] = line.portions ?? [];
  if (first === undefined || second === undefined) return [...faults, "parts"];
  if (order(plus(big(first.ml), big(second.ml)), given) !== 0) faults.push("parts of the whole");
  for (const { ml, overH, mlPerH } of [first, second]) {
    const exact = by(big(ml), big(overH));
    const least = big(0.01);
    const off = order(big(mlPerH), exact) > 0 ? [big(mlPerH), exact] : [exact, big(mlPerH)];
    const [more, less] = off as [BigFraction, BigFraction];
    // To the nearest step of the pump, or to its smallest where that is more.
    const isNear = order(more, plus(less, big(0.05))) <= 0 || order(big(mlPerH), least) === 0;
    if (!isNear) faults.push("rate of a part");
  }
  return faults;
}

function puffFaults(
  line: DoseLine,
  {
    asked,
    maximum,
    perPuff,
  }: {
    readonly asked: BigFraction;
    readonly maximum: BigFraction | undefined;
    readonly perPuff: BigFraction;
  },
): string[] {
  const exact = by(asked, perPuff);
  const half = big(0.5);
  if (line.puffs === undefined) {
    const isTooLittle = order(exact, half) <= 0 || (maximum !== undefined && order(perPuff, maximum) > 0);
    return isTooLittle && isNumber(line.dose.amount, asked) ? [] : ["no puffs"];
  }
  const { puffs } = line.puffs;
  const given = times(big(puffs), perPuff);
  const faults: string[] = [];
  if (!Number.isInteger(puffs) || puffs < 1) faults.push("part of a puff");
  if (!isNumber(line.dose.amount, given)) faults.push("mass of the puffs");
  if (maximum && order(given, maximum) > 0) faults.push("puffs past the maximum");
  const isNear = order(plus(big(puffs), half), exact) >= 0 && order(big(puffs), plus(exact, half)) <= 0;
  const next = times(big(puffs + 1), perPuff);
  if (!isNear && !(maximum && order(next, maximum) > 0)) faults.push("nearest puff");
  return faults;
}

function infusionFaults(
  line: DoseLine,
  rule: Extract<Rule, { kind: "infusion" }>,
  kg: BigFraction,
): string[] {
  const [prepared] = line.preparations ?? [];
  const [rate] = prepared?.working.filter((each) => each.step === "rate") ?? [];
  if (prepared === undefined || rate?.step !== "rate") return ["no rate"];
  const { amount, unit } = prepared.amount;
  const perMl = by(inUnit(amount, unit, rule.unit), big(prepared.totalMl));
  const perHour = big(rule.per === "min" ? 60 : 1);
  const exact = by(times(times(big(rule.startPerKg), kg), perHour), perMl);
  const highest = by(times(times(big(rule.highPerKg), kg), perHour), perMl);
  const { mlPerH, dosePerMlPerH, lastsH } = prepared;
  const faults: string[] = [];
  if (!isNumber(rate.exactMlPerH, exact)) faults.push("exact rate");
  if (!isNumber(dosePerMlPerH.amount, by(perMl, times(kg, perHour)))) faults.push("dose per mL/h");
  if (!isMultiple(big(mlPerH), big(0.01))) faults.push("pump step");
  if (order(big(mlPerH), highest) > 0 && mlPerH > 0.01) faults.push("past the highest dose");
  const hours = by(big(prepared.totalMl), big(mlPerH));
  if (order(big(lastsH), hours) > 0 || order(plus(big(lastsH), big(0.1)), hours) <= 0) faults.push("lasts");
  return faults;
}

function tierFaults(line: DoseLine, rule: Extract<Rule, { kind: "tiered-rate" }>, kg: BigFraction): string[] {
  const [first, second, third] = rule.tiers.map(({ perKg }) => big(perKg));
  if (first === undefined || second === undefined || third === undefined) return ["tiers"];
  const atMost = (value: BigFraction, most: BigFraction): BigFraction =>
    order(value, most) < 0 ? value : most;
  const above = (edge: number): BigFraction => {
    const rest = plus(kg, { over: BigInt(-edge), under: 1n });
    return order(rest, big(0)) > 0 ? rest : big(0);
  };
  const sum = plus(
    plus(times(first, atMost(kg, big(10))), times(second, atMost(above(10), big(10)))),
    times(third, above(20)),
  );
  const wanted = rule.maximum ? atMost(sum, big(rule.maximum.amount)) : sum;
  const [tiers] = step(line, "tiers");
  const [pump] = step(line, "pump-step");
  const faults: string[] = [];
  if (tiers === undefined || !isNumber(tiers.result.amount, sum)) faults.push("sum of tiers");
  if (!isNumber(pump?.exactMlPerH ?? line.dose.amount, wanted)) faults.push("rate");
  if (order(big(line.dose.amount), wanted) > 0) faults.push("rate above the exact one at a ceiling");
  return faults;
}

describe("the engine against exact arithmetic on whole numbers without bound", () => {
  const counts = { lines: 0, burns: 0, puffs: 0, infusions: 0, tiers: 0, limited: 0, diluted: 0 };
  const wrong: string[] = [];

  beforeAll(() => {
    const random = randomOf(20261125);
    for (let index = 0; index < FORMULARIES; index += 1) {
      const cases = Array.from({ length: USES }, () => randomCase(random));
      const formulary = formularyOf(cases);
      for (let child = 0; child < CHILDREN; child += 1) {
        const kg = Math.round(50 + random() * 9500) / 100;
        const burnPercent = Math.round(1 + random() * 999) / 10;
        const sheet = computeSheet({ formulary, burnPercent, weights: { totalKg: kilograms(kg) } });
        for (const [at, line] of sheet.entries()) {
          const own = cases[at];
          if (own === undefined || line.unavailable) {
            wrong.push(`${line.id} has no dose`);
            continue;
          }
          counts.lines += 1;
          if (own.rule.kind === "infusion") counts.infusions += 1;
          if (own.rule.kind === "tiered-rate") counts.tiers += 1;
          if (line.portions !== undefined) counts.burns += 1;
          if (line.puffs !== undefined) counts.puffs += 1;
          if (line.limitedBy !== undefined) counts.limited += 1;
          if (line.volume?.dilution !== undefined) counts.diluted += 1;
          const faults = faultsOf(line, own, { kg, burnPercent });
          if (faults.length > 0) wrong.push(`${faults.join(", ")}: ${kg} kg, ${JSON.stringify(own)}`);
        }
      }
    }
  }, 60_000);

  it("agrees on every dose, limit, volume, rate and sum of 100,000", () => {
    expect(wrong.slice(0, 5)).toEqual([]);
    expect(counts.lines).toBe(FORMULARIES * USES * CHILDREN);
  });

  it("saw enough of each kind", () => {
    expect(counts.infusions).toBeGreaterThan(15_000);
    expect(counts.tiers).toBeGreaterThan(5000);
    expect(counts.limited).toBeGreaterThan(5000);
    expect(counts.diluted).toBeGreaterThan(1000);
    expect(counts.burns).toBeGreaterThan(3000);
    expect(counts.puffs).toBeGreaterThan(3000);
  });
});
