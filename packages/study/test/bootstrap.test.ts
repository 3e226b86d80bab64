import { describe, expect, it } from "vitest";
import {
  accuracyStatistics,
  bootstrapClusters,
  clusterColumns,
  createGenerator,
} from "../src/bootstrap/index.ts";
import reference from "./r/bootstrap.json" with { type: "json" };

const trueKg = Float64Array.from(reference.error, () => 10);
const estimateKg = Float64Array.from(reference.error, (error) => 10 + error / 10);
const columns = clusterColumns({ estimateKg, trueKg, cluster: Int32Array.from(reference.cluster) });
const figures = ["meanPercent", "rmspe", "within10"] as const;
const statistics = figures.map((figure) => accuracyStatistics[figure]);

describe("bootstrapClusters()", () => {
  // reference/bootstrap.json: the boot package of R, 20,000 replicates of the same clusters.
  it.each(figures.map((figure, i) => ({ figure, i })))(
    "gives the intervals of R's boot for $figure",
    ({ figure, i }) => {
      const own = bootstrapClusters({ columns, statistics, seed: 5, replicates: 20_000 })?.[i];
      const expected = reference.intervals[figure];
      const width = (expected.percentile[1] as number) - (expected.percentile[0] as number);
      expect(own?.value).toBeCloseTo(expected.value, 9);
      expect(Math.abs((own?.standardError ?? 0) / expected.se - 1)).toBeLessThan(0.03);
      for (const kind of ["percentile", "bca"] as const) {
        // Two Monte-Carlo quantiles of 20,000 draws differ by about 1 % of the width; 4 % is far out.
        expect(Math.abs((own?.[kind].low ?? 0) - (expected[kind][0] as number))).toBeLessThan(0.04 * width);
        expect(Math.abs((own?.[kind].high ?? 0) - (expected[kind][1] as number))).toBeLessThan(0.04 * width);
      }
    },
  );

  it("gives the same for the same seed, and another for another", () => {
    const run = (seed: number): unknown => bootstrapClusters({ columns, statistics, seed, replicates: 200 });
    expect(run(1)).toEqual(run(1));
    expect(run(1)).not.toEqual(run(2));
  });

  it("stops when told to", () => {
    expect(bootstrapClusters({ columns, statistics, seed: 1, onProgress: () => false })).toBeUndefined();
  });

  it("is wider by clusters than by rows, as rows of a cluster are alike", () => {
    const rows = clusterColumns({ estimateKg, trueKg });
    const width = (own: typeof rows): number => {
      const [mean] = bootstrapClusters({ columns: own, statistics, seed: 3 }) ?? [];
      return (mean?.percentile.high ?? 0) - (mean?.percentile.low ?? 0);
    };
    expect(width(columns)).toBeGreaterThan(1.1 * width(rows));
  });
});

describe("createGenerator()", () => {
  it("steps as xoshiro128++ does in exact whole-number arithmetic", () => {
    const M = 0xffffffffn;
    const rotate = (x: bigint, k: bigint): bigint => ((x << k) | (x >> (32n - k))) & M;
    // The state after seeding, by the same splitmix32 steps in BigInt.
    let fill = 42n;
    const word = (): bigint => {
      fill = (fill + 0x9e3779b9n) & M;
      let t = ((fill ^ (fill >> 16n)) * 0x21f0aaadn) & M;
      t = ((t ^ (t >> 15n)) * 0x735a2d97n) & M;
      return t ^ (t >> 15n);
    };
    const s = [word(), word(), word(), word()] as [bigint, bigint, bigint, bigint];
    const { next32 } = createGenerator(42);
    for (let i = 0; i < 1000; i++) {
      const expected = (rotate((s[0] + s[3]) & M, 7n) + s[0]) & M;
      const t = (s[1] << 9n) & M;
      s[2] ^= s[0];
      s[3] ^= s[1];
      s[1] ^= s[2];
      s[0] ^= s[3];
      s[2] ^= t;
      s[3] = rotate(s[3], 11n);
      expect(next32()).toBe(Number(expected));
    }
  });

  it("draws uniform and normal numbers with the moments they should have", () => {
    const { uniform, normal } = createGenerator(9);
    const n = 100_000;
    const u = Array.from({ length: n }, uniform);
    const z = Array.from({ length: n }, normal);
    const mean = (values: number[]): number => values.reduce((a, b) => a + b, 0) / values.length;
    expect(Math.abs(mean(u) - 0.5)).toBeLessThan(4 * Math.sqrt(1 / 12 / n));
    expect(Math.abs(mean(z))).toBeLessThan(4 / Math.sqrt(n));
    expect(Math.abs(mean(z.map((x) => x * x)) - 1)).toBeLessThan(4 * Math.sqrt(2 / n));
    expect(Math.abs(mean(z.map((x) => x ** 4)) - 3)).toBeLessThan(4 * Math.sqrt(96 / n));
  });
});
