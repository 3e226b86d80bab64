export {
  type ChartSignal,
  fewestForLimits,
  individualsLimits,
  type RunChart,
  runChart,
} from "./run-chart.ts";
