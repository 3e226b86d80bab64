import { formatNumber } from "@steelyard/core/units";
import type { RunChart } from "@steelyard/study/run-chart";
import type { VNode } from "preact";
import { language } from "../../../messages/language.ts";
import { writeError } from "../../components/write-percent.ts";
import { words } from "../../messages/index.ts";
import { chartScale } from "./chart-scale.ts";

const width = 720;
const height = 340;
const box = { left: 52, right: 640, top: 14, bottom: 292 } as const;

/** The chart of single values: shapes tell the signals, not colour alone. What it says stands beside it in words and as a table. */
export function RunChartFigure({ chart }: { readonly chart: RunChart }): VNode {
  const { chart: said } = words;
  const { points, limits, centre = 0 } = chart;
  const scale = chartScale([
    ...points.map(({ value }) => value),
    ...(limits ? [limits.low, limits.high] : []),
  ]);
  const x = (index: number): number =>
    points.length === 1
      ? (box.left + box.right) / 2
      : round(box.left + 10 + (index / (points.length - 1)) * (box.right - box.left - 20));
  const y = (value: number): number =>
    round(box.bottom - ((value - scale.from) / (scale.to - scale.from)) * (box.bottom - box.top));
  const path = points.map(({ value }, index) => `${index === 0 ? "M" : "L"}${x(index)} ${y(value)}`).join("");
  const across = `M${box.left} 0H${box.right}`;
  return (
    <figure class="run-chart">
      <svg viewBox={`0 0 ${width} ${height}`} role="img" aria-label={said.label}>
        {scale.ticks.map((tick) => (
          <g key={tick}>
            <path class="run-chart__grid" d={across} transform={`translate(0 ${y(tick)})`} />
            <text class="run-chart__tick" x={box.left - 8} y={y(tick) + 4} text-anchor="end">
              {formatNumber(tick, language?.numbers)}
            </text>
          </g>
        ))}
        <path class="run-chart__zero" d={across} transform={`translate(0 ${y(0)})`} />
        <path class="run-chart__centre" d={across} transform={`translate(0 ${y(centre)})`} />
        <text class="run-chart__name" x={box.right + 6} y={y(centre) + 4}>
          {said.centre}
        </text>
        {limits !== undefined && (
          <>
            <path class="run-chart__limit" d={across} transform={`translate(0 ${y(limits.high)})`} />
            <path class="run-chart__limit" d={across} transform={`translate(0 ${y(limits.low)})`} />
            <text class="run-chart__name" x={box.right + 6} y={y(limits.high) + 4}>
              {said.upper}
            </text>
            <text class="run-chart__name" x={box.right + 6} y={y(limits.low) + 4}>
              {said.lower}
            </text>
          </>
        )}
        <path class="run-chart__line" d={path} />
        {points.map(({ value, signals }, index) => {
          const at = `translate(${x(index)} ${y(value)})`;
          const name = `${index + 1}: ${writeError(value)}`;
          return (
            <g key={index} transform={at}>
              <title>{name}</title>
              {signals.includes("beyond-limits") ? (
                <path class="run-chart__outside" d="M-6-6h12v12h-12z" />
              ) : (
                <circle class={signals.length > 0 ? "run-chart__run" : "run-chart__dot"} r="3.5" />
              )}
            </g>
          );
        })}
        <text class="run-chart__name" x={(box.left + box.right) / 2} y={height - 22} text-anchor="middle">
          {said.xAxis}
        </text>
        <text
          class="run-chart__name"
          transform={`translate(14 ${(box.top + box.bottom) / 2}) rotate(-90)`}
          text-anchor="middle"
        >
          {said.axis}
        </text>
      </svg>
      <figcaption class="run-chart__key">
        <span>
          <svg viewBox="-8 -8 16 16" aria-hidden="true">
            <path class="run-chart__outside" d="M-6-6h12v12h-12z" />
          </svg>
          {said.isOutside}
        </span>
        <span>
          <svg viewBox="-8 -8 16 16" aria-hidden="true">
            <circle class="run-chart__run" r="4.5" />
          </svg>
          {said.isRun}
        </span>
      </figcaption>
    </figure>
  );
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}
