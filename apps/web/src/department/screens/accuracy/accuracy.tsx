import { type AccuracyAnswer, type AccuracyPoint, accuracyAnswerSchema } from "@steelyard/records/department";
import { fewestForLimits, type RunChart, runChart } from "@steelyard/study/run-chart";
import type { VNode } from "preact";
import { useMemo, useState } from "preact/hooks";
import { writeDay } from "../../../components/case-log/clock.ts";
import { writeQuantity } from "../../../components/quantity/quantity.tsx";
import { Answer } from "../../components/answer.tsx";
import { DayRange, isBackward } from "../../components/day-range.tsx";
import { writeError, writeShare } from "../../components/write-percent.ts";
import { words } from "../../messages/index.ts";
import { useAnswer } from "../../state/department-context.ts";
import { hashOf } from "../../state/department-screens.ts";
import { RunChartFigure } from "./run-chart-figure.tsx";

/** How far estimates lie from the scale, case after case, with the limits of chance. */
export function Accuracy(): VNode {
  const { chart } = words;
  const [typed, setTyped] = useState({ from: "", to: "" });
  const [shown, setShown] = useState(typed);
  const answer = useAnswer<AccuracyAnswer>({
    path: "accuracy",
    query: { ...shown },
    schema: accuracyAnswerSchema,
  });
  return (
    <div class="stack wide">
      <p class="soft">{chart.intro}</p>
      <form
        class="filters"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          if (!isBackward(typed)) setShown(typed);
        }}
      >
        <DayRange days={typed} onType={setTyped} />
        <p class="row">
          <button class="button" type="submit">
            {words.show}
          </button>
          <button class="button" type="button" onClick={() => print()}>
            {chart.print}
          </button>
        </p>
      </form>
      <Answer answer={answer}>
        {({ points, more }) => (
          <>
            {more && <p class="note note--warn">{chart.earlier}</p>}
            {points.length === 0 ? <p class="casebook__empty">{chart.none}</p> : <Charted points={points} />}
          </>
        )}
      </Answer>
    </div>
  );
}

/** The chart, what it says in sentences, and the same as a table. */
export function Charted({ points }: { readonly points: readonly AccuracyPoint[] }): VNode {
  const { chart: said } = words;
  const chart = useMemo(() => runChart(points.map(({ errorPercent }) => errorPercent)), [points]);
  const inOrder = points.every(({ at }) => at !== undefined);
  const within10 = points.filter(({ errorPercent }) => Math.abs(errorPercent) <= 10).length;
  return (
    <>
      <p>
        <b>
          {said.summary({
            n: points.length,
            centre: writeError(chart.centre ?? 0),
            within10: writeShare((100 * within10) / points.length),
          })}
        </b>{" "}
        {inOrder ? `${limitWords(chart)} ${signalWords(chart)}` : said.noOrder}
      </p>
      {inOrder && <RunChartFigure chart={chart} />}
      <ErrorTable points={points} chart={chart} inOrder={inOrder} />
    </>
  );
}

function limitWords({ limits }: RunChart): string {
  const { chart } = words;
  return limits === undefined
    ? chart.fewLimits(fewestForLimits)
    : chart.limits(writeError(limits.low), writeError(limits.high));
}

function signalWords({ points }: RunChart): string {
  const { chart } = words;
  const outside = points.filter(({ signals }) => signals.includes("beyond-limits")).length;
  const run = points.filter(({ signals }) => signals.includes("long-run")).length;
  if (outside + run === 0) return chart.noSignal;
  return [outside > 0 ? chart.outside(outside) : "", run > 0 ? chart.longRun(run) : ""].join(" ").trim();
}

interface TableProps {
  readonly points: readonly AccuracyPoint[];
  readonly chart: RunChart;
  /** Without the order of time there is no start and no signal. */
  readonly inOrder: boolean;
}

function ErrorTable({ points, chart, inOrder }: TableProps): VNode {
  const { chart: said } = words;
  const hasCode = points.some(({ code }) => code !== undefined);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls has to be reached by keys
    <section class="scroll" tabIndex={0} aria-label={said.table}>
      <table>
        <caption>{said.table}</caption>
        <thead>
          <tr>
            <th scope="col" class="number">
              {said.number}
            </th>
            {inOrder && <th scope="col">{said.day}</th>}
            {hasCode && <th scope="col">{said.code}</th>}
            <th scope="col" class="number">
              {said.estimate}
            </th>
            <th scope="col" class="number">
              {said.scale}
            </th>
            <th scope="col" class="number">
              {said.days}
            </th>
            <th scope="col" class="number">
              {said.error}
            </th>
            {inOrder && <th scope="col">{said.signal}</th>}
          </tr>
        </thead>
        <tbody>
          {points.map(({ caseId, code, at, estimateKg, measuredKg, daysAfter, errorPercent }, index) => (
            // Cases that a researcher sees have no name but their place.
            <tr key={caseId ?? index}>
              <td class="number">{index + 1}</td>
              {inOrder && at !== undefined && <td>{writeDay(at)}</td>}
              {hasCode && (
                <td>{caseId === undefined ? code : <a href={hashOf("cases", caseId)}>{code}</a>}</td>
              )}
              <td class="number">{writeQuantity({ kg: estimateKg })}</td>
              <td class="number">{writeQuantity({ kg: measuredKg, measured: true })}</td>
              <td class="number">{daysAfter}</td>
              <td class="number">{writeError(errorPercent)}</td>
              {inOrder && <td>{signalsOf(chart, index)}</td>}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function signalsOf({ points }: RunChart, index: number): string {
  const { chart } = words;
  const signals = points[index]?.signals ?? [];
  return signals.map((signal) => (signal === "long-run" ? chart.isRun : chart.isOutside)).join(", ");
}
