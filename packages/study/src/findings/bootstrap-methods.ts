import type { StudyAnalysis } from "../analysis/index.ts";
import {
  type AccuracyFigure,
  accuracyStatistics,
  type BootstrapInterval,
  bootstrapClusters,
  clusterColumns,
} from "../bootstrap/index.ts";
import { methodId } from "../methods/index.ts";
import type { StudyTable } from "../table/index.ts";
import type { ClusterBootstrap, ClusteredAccuracy } from "./study-findings.ts";

/** More clusters than this are not drawn: the plain intervals are narrow there, and drawing would take minutes. */
const MOST_CLUSTERS = 50_000;

const FIGURES: readonly AccuracyFigure[] = [
  "meanPercent",
  "sdPercent",
  "rmspe",
  "mape",
  "within10",
  "within20",
  "over20",
  "under20",
  "lowerLimit",
  "upperLimit",
];

/** The column whose words are clusters unless another is chosen: one called so, else the child's number where a child has several rows. */
function usualClusters({ words, rows }: StudyTable): string | undefined {
  if (words.has("cluster")) return "cluster";
  const children = words.get("childId");
  return children !== undefined && children.levels.length < rows ? "childId" : undefined;
}

/** Intervals of every method's main figures by drawing whole clusters; rows without a cluster are left out. */
export function bootstrapMethods(
  { table, methods }: StudyAnalysis,
  {
    seed,
    replicates,
    column = usualClusters(table),
    onProgress,
  }: {
    readonly seed: number;
    readonly replicates: number;
    readonly column?: string | undefined;
    readonly onProgress?: (share: number) => undefined;
  },
): ClusterBootstrap {
  const clusters = column === undefined ? undefined : table.words.get(column);
  if (column !== undefined && clusters === undefined)
    throw new RangeError(
      `Cannot draw clusters as column must be one of ${[...table.words.keys()]}: current value is ${column}`,
    );
  const trueKg = table.numbers.get("weightKg") as Float64Array;
  const leftOut: { method: string; clusters: number }[] = [];
  const drawn = methods.flatMap(({ estimates }, i): ClusteredAccuracy[] => {
    const method = methodId(estimates.method);
    // Sums of millions of clusters would fill the memory only to be refused.
    const most = clusters?.levels.length ?? estimates.served;
    if (most > MOST_CLUSTERS) {
      leftOut.push({ method, clusters: most });
      return [];
    }
    const columns = clusterColumns({
      estimateKg: estimates.estimateKg,
      trueKg,
      ...(clusters === undefined ? {} : { cluster: clusters.codes }),
    });
    const [children = new Float64Array()] = columns;
    if (children.length < 2) {
      leftOut.push({ method, clusters: children.length });
      return [];
    }
    const statistics = FIGURES.map((name) => accuracyStatistics[name]);
    const intervals = bootstrapClusters({
      columns,
      statistics,
      seed,
      replicates,
      onProgress: (share) => onProgress?.((i + share) / methods.length),
    }) as readonly BootstrapInterval[];
    return [
      {
        method,
        clusters: children.length,
        children: children.reduce((sum, n) => sum + n, 0),
        figures: Object.fromEntries(FIGURES.map((name, k) => [name, intervals[k]])),
      },
    ];
  });
  return { ...(column === undefined ? {} : { column }), replicates, methods: drawn, leftOut };
}
