import { concordance, type Interval, limitsOfAgreement, regressionLimits } from "../../src/accuracy/index.ts";
import {
  intraclassCorrelations,
  repeatedLimits,
  technicalError,
  weightedKappa,
} from "../../src/agreement/index.ts";
import { wilsonInterval } from "../../src/analysis/wilson-interval.ts";
import { bootstrapClusters, type Generator } from "../../src/bootstrap/index.ts";
import { comparePairedErrors, pairedDifference } from "../../src/comparison/index.ts";
import { poolEffects, poolSites, summariseSite } from "../../src/pooling/index.ts";

/** One simulated study: for every interval it makes, whether it holds the truth it was drawn from. */
export type Trial = (chance: Generator) => Readonly<Record<string, boolean>>;

const Z = 1.959963984540054;
const holds = ({ low, high }: { low: number; high: number }, truth: number): boolean =>
  low <= truth && truth <= high;
const many = <T>(n: number, make: (i: number) => T): T[] => Array.from({ length: n }, (_, i) => make(i));

/** Truths in the comments are those of the distribution that is drawn from. */
export const trials: Readonly<Record<string, Trial>> = {
  wilson({ uniform }) {
    // Shares of their own for every study: at one fixed share the coverage of any interval saws up and down.
    const p = 0.5 + 0.45 * uniform();
    const count = many(150, () => uniform()).filter((u) => u < p).length;
    return { "share, Wilson, n = 150": holds(wilsonInterval(count, 150), p) };
  },
  limits({ normal }) {
    const own = limitsOfAgreement(many(60, () => 1 + 8 * normal()));
    const name = "n = 60";
    return {
      [`bias, t, ${name}`]: holds(own.bias, 1),
      [`SD, chi-squared, ${name}`]: holds(own.sd, 8),
      [`lower limit, MOVER, ${name}`]: holds(own.lower, 1 - 8 * Z),
      [`upper limit, MOVER, ${name}`]: holds(own.upper, 1 + 8 * Z),
      [`upper limit, approximate, ${name}`]: holds(own.approximate.upper, 1 + 8 * Z),
    };
  },
  regression({ normal, uniform }) {
    const sizes = many(60, () => 5 + 45 * uniform());
    const { bias } = regressionLimits({ differences: sizes.map((size) => 1 + 0.1 * size + normal()), sizes });
    return {
      "proportional bias, slope, n = 60": holds(bias.slope, 0.1),
      "proportional bias, intercept, n = 60": holds(bias.intercept, 1),
    };
  },
  concordance({ normal }) {
    // SDs 10 and 11, correlation 0.95, shift 1: 2 x 0.95 x 110 / (100 + 121 + 1).
    const pairs = many(80, () => {
      const [a, b] = [normal(), normal()];
      return [20 + 10 * a, 21 + 11 * (0.95 * a + Math.sqrt(1 - 0.95 ** 2) * b)] as const;
    });
    const own = concordance({ first: pairs.map(([a]) => a), second: pairs.map(([, b]) => b) });
    return { "concordance, n = 80": holds(own, (2 * 0.95 * 110) / 222) };
  },
  paired({ uniform }) {
    const counts = { both: 0, onlyFirst: 0, onlySecond: 0, neither: 0 };
    for (let i = 0; i < 150; i++) {
      const u = uniform();
      if (u < 0.6) counts.both++;
      else if (u < 0.75) counts.onlyFirst++;
      else if (u < 0.82) counts.onlySecond++;
      else counts.neither++;
    }
    return { "difference of paired shares, Newcombe, n = 150": holds(pairedDifference(counts), 0.08) };
  },
  squared({ normal }) {
    // Errors with SD 8 and 10, correlation 0.6: mean difference of squares -36.
    const pairs = many(300, () => {
      const [a, b] = [normal(), normal()];
      return [8 * a, 10 * (0.6 * a + 0.8 * b)] as const;
    });
    const own = comparePairedErrors({ first: pairs.map(([a]) => a), second: pairs.map(([, b]) => b) });
    // Mean size of a normal error: SD sqrt(2 / pi).
    const sizes = -2 * Math.sqrt(2 / Math.PI);
    return {
      "difference of squared errors, t, n = 300": holds(own.squared.difference, -36),
      "difference of sizes of errors, t, n = 300": holds(own.absolute.difference, sizes),
    };
  },
  readers({ normal }) {
    const table = (fixed: boolean): number[][] => {
      const readers = fixed ? [-1, 0, 1, 2] : many(4, () => 2 * normal());
      return many(40, () => {
        const child = 150 + 6 * normal();
        return readers.map((reader) => child + reader + 3 * normal());
      });
    };
    const random = intraclassCorrelations(table(false));
    const fixed = intraclassCorrelations(table(true));
    const oneWay = many(40, () => {
      const child = 150 + 6 * normal();
      return many(4, () => child + 3 * normal());
    });
    const meanOf = (single: number): number => (4 * single) / (1 + 3 * single);
    const name = "40 children, 4 readers";
    const own = intraclassCorrelations(oneWay).oneWay;
    return {
      [`ICC(1,1), ${name}`]: holds(own.single, 36 / 45),
      [`ICC(1,k), ${name}`]: holds(own.mean, meanOf(36 / 45)),
      [`ICC(2,1), ${name}`]: holds(random.twoWayRandom.single, 36 / 49),
      [`ICC(2,k), ${name}`]: holds(random.twoWayRandom.mean, meanOf(36 / 49)),
      [`ICC(3,1), ${name}`]: holds(fixed.twoWayFixed.single, 36 / 45),
      [`ICC(3,k), ${name}`]: holds(fixed.twoWayFixed.mean, meanOf(36 / 45)),
      [`technical error, ${name}`]: holds(technicalError(oneWay).tem, 3),
    };
  },
  kappa({ uniform }) {
    const shares = [0.25, 0.06, 0.02, 0.05, 0.24, 0.06, 0.01, 0.06, 0.25];
    const counts = many(9, () => 0);
    for (let i = 0; i < 250; i++) {
      let u = uniform();
      let cell = 0;
      while (cell < 8 && u >= (shares[cell] as number)) u -= shares[cell++] as number;
      counts[cell] = (counts[cell] as number) + 1;
    }
    const square = (cells: readonly number[]): number[][] =>
      [cells.slice(0, 3), cells.slice(3, 6), cells.slice(6)] as number[][];
    const truth = square(shares.map((share) => 100 * share).map(Math.round));
    return Object.fromEntries(
      (["none", "linear", "quadratic"] as const).map((weighting) => [
        `kappa, weights ${weighting}, n = 250`,
        holds(weightedKappa(square(counts), weighting), weightedKappa(truth, weighting).kappa),
      ]),
    );
  },
  repeated({ normal }) {
    // Interaction SD 2, within 1.5 and 1: variance of a single difference 4 + 2.25 + 1.
    const upper = 0.5 + Z * Math.sqrt(7.25);
    const lower = 0.5 - Z * Math.sqrt(7.25);
    const children = many(50, (i) => {
      const child = 20 + 5 * normal();
      const own = 2 * normal();
      const reads = 2 + (i % 3);
      return {
        first: many(reads, () => child + 0.5 + own + 1.5 * normal()),
        second: many(reads, () => child + normal()),
      };
    });
    const varying = repeatedLimits(children, "varying");
    const constant = repeatedLimits(children, "constant");
    const name = "50 children, 2 to 4 readings";
    return {
      [`bias of repeated readings, ${name}`]: holds(varying.bias, 0.5),
      [`SD of a single difference, true value varying, ${name}`]: holds(varying.sd, Math.sqrt(7.25)),
      [`SD of a single difference, true value constant, ${name}`]: holds(constant.sd, Math.sqrt(7.25)),
      [`lower limit, true value varying, ${name}`]: holds(varying.lower, lower),
      [`lower limit, true value constant, ${name}`]: holds(constant.lower, lower),
      [`upper limit, true value varying, ${name}`]: holds(varying.upper, upper),
      [`upper limit, true value constant, ${name}`]: holds(constant.upper, upper),
    };
  },
  pooled({ normal, uniform }) {
    const effects = many(10, () => {
      const variance = 0.01 + 0.05 * uniform();
      return { effect: 1 + 0.3 * normal() + Math.sqrt(variance) * normal(), variance };
    });
    const own = poolEffects(effects);
    const another = 1 + 0.3 * normal();
    return {
      "pooled effect, REML with Hartung-Knapp, 10 sites": holds(own.pooled, 1),
      "prediction of a new site, REML, 10 sites":
        own.prediction !== undefined && holds(own.prediction, another),
    };
  },
  pooledPlainly({ normal, uniform }) {
    // Many sites: the normal interval does not know that the variance between them was estimated.
    const effects = many(60, () => {
      const variance = 0.01 + 0.05 * uniform();
      return { effect: 1 + 0.3 * normal() + Math.sqrt(variance) * normal(), variance };
    });
    const [dl, reml] = (["dersimonian-laird", "reml"] as const).map((between) =>
      poolEffects(effects, { between, hartungKnapp: false }),
    ) as [ReturnType<typeof poolEffects>, ReturnType<typeof poolEffects>];
    return {
      "pooled effect, DerSimonian-Laird, normal, 60 sites": holds(dl.pooled, 1),
      "pooled effect, REML, normal, 60 sites": holds(reml.pooled, 1),
    };
  },
  pooledShares({ normal, uniform }) {
    // A true share for each site, its logit normal about 0.8: what is pooled is the share of the middle site.
    const summaries = many(12, (i) => {
      const p = 1 / (1 + Math.exp(-(0.8 + 0.3 * normal())));
      const n = 150 + Math.floor(150 * uniform());
      const trueKg = new Float64Array(n).fill(10);
      const estimateKg = Float64Array.from({ length: n }, () =>
        uniform() < p ? 10.2 + 0.5 * uniform() : 11.5 + uniform(),
      );
      return summariseSite({ site: `s${10 + i}`, trueKg, methods: [{ method: "m", estimateKg }] });
    });
    const truth = 100 / (1 + Math.exp(-0.8));
    const [own] = poolSites(summaries);
    return {
      "share within 10 % pooled as logit, REML with Hartung-Knapp, 12 sites":
        own !== undefined && holds(own.within10Percent.pooled, truth),
    };
  },
  bootstrap({ normal, uniform, next32 }) {
    const clusters = 120;
    const columns = [0, 1, 2, 3, 4].map(() => new Float64Array(clusters)) as [
      Float64Array,
      Float64Array,
      Float64Array,
      Float64Array,
      Float64Array,
    ];
    const [n, sum, squares, within, sizes] = columns;
    for (let i = 0; i < clusters; i++) {
      const own = 4 * normal();
      for (let visit = 0; visit < 1 + Math.floor(4 * uniform()); visit++) {
        const error = 1 + own + 6 * normal();
        n[i] = (n[i] as number) + 1;
        sum[i] = (sum[i] as number) + error;
        squares[i] = (squares[i] as number) + error * error;
        sizes[i] = (sizes[i] as number) + Math.abs(error);
        within[i] = (within[i] as number) + (Math.abs(error) <= 10 ? 1 : 0);
      }
    }
    const sd = (s: Float64Array): number => {
      const [count, total, squared] = s as unknown as [number, number, number];
      return Math.sqrt(Math.max(0, squared - (total * total) / count) / (count - 1));
    };
    const [mean, rmspe, share, mape, upper] = bootstrapClusters({
      columns,
      statistics: [
        (s) => (s[1] as number) / (s[0] as number),
        (s) => Math.sqrt((s[2] as number) / (s[0] as number)),
        (s) => (s[3] as number) / (s[0] as number),
        (s) => (s[4] as number) / (s[0] as number),
        (s) => (s[1] as number) / (s[0] as number) + Z * sd(s),
      ],
      seed: next32(),
      replicates: 600,
    }) as unknown as [Boot, Boot, Boot, Boot, Boot];
    const name = "120 clusters";
    return {
      [`mean error, percentile bootstrap, ${name}`]: holds(mean.percentile, 1),
      [`mean error, BCa bootstrap, ${name}`]: holds(mean.bca, 1),
      [`RMSPE, BCa bootstrap, ${name}`]: holds(rmspe.bca, Math.sqrt(53)),
      [`MAPE, BCa bootstrap, ${name}`]: holds(mape.bca, MEAN_SIZE),
      [`upper limit, BCa bootstrap, ${name}`]: holds(upper.bca, 1 + Z * Math.sqrt(52)),
      [`share within 10 %, percentile bootstrap, ${name}`]: holds(share.percentile, WITHIN_10),
      [`share within 10 %, BCa bootstrap, ${name}`]: holds(share.bca, WITHIN_10),
    };
  },
};

interface Boot {
  readonly percentile: Interval;
  readonly bca: Interval;
}

/** P(|1 + sqrt(52) Z| <= 10), from R: pnorm(9 / sqrt(52)) - pnorm(-11 / sqrt(52)). */
const WITHIN_10 = 0.830421788239;

/** E|1 + sqrt(52) Z|, from R: sqrt(104 / pi) * exp(-1 / 104) + 1 - 2 * pnorm(-1 / sqrt(52)). */
const MEAN_SIZE = 5.80886;
