const plural = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;

/** The chart of errors over time. */
export const chartEn = {
  intro:
    "Each case that was weighed later: how far the estimate lay from the scale, in the order of time. The limits are those of an individuals chart, from the cases themselves: what lies outside, or a long run on one side, is unlikely to be chance alone and worth a look at tapes, scales and how children are measured.",
  none: "No case of these days has both an estimate and a scale weight.",
  summary: ({
    n,
    centre,
    within10,
  }: {
    readonly n: number;
    readonly centre: string;
    readonly within10: string;
  }): string => `${plural(n, "case", "cases")}: mean error ${centre}, ${within10} within 10 % of the scale.`,
  limits: (low: string, high: string): string => `Control limits ${low} to ${high}.`,
  fewLimits: (limit: number): string => `Control limits are drawn from ${limit} cases on.`,
  noOrder:
    "Without names the cases stand in an order by chance and without days, so there are no limits of chance.",
  noSignal: "No signal.",
  outside: (n: number): string => `${plural(n, "case lies", "cases lie")} outside the limits.`,
  longRun: (n: number): string =>
    `${plural(n, "case belongs", "cases belong")} to a long run on one side of the centre.`,
  label: "Percentage error of the estimate, case after case",
  axis: "Error, % of the scale weight",
  xAxis: "Case, in the order of time",
  centre: "mean",
  upper: "upper limit",
  lower: "lower limit",
  isOutside: "outside the limits",
  isRun: "long run",
  table: "The cases of the chart",
  number: "No.",
  day: "Start",
  code: "Case",
  estimate: "Estimate",
  scale: "Scale",
  days: "Days after",
  error: "Error",
  signal: "Signal",
  earlier: "There are earlier cases: ask for them by days.",
  print: "Print",
};
