import type { EstimatedChild } from "@steelyard/core/body";
import type { VNode } from "preact";
import { messages } from "../../messages/index.ts";
import { Beam } from "../beam/beam.tsx";
import type { BeamMark } from "../beam/beam-marks.ts";
import { Quantity } from "../quantity/quantity.tsx";
import { WeightLine } from "../weight-line/weight-line.tsx";

interface Props {
  readonly child: EstimatedChild | undefined;
}

/** Total weight, large; its range and the ideal weight beside it. Keeps its size whether it is full or empty. */
export function WeightCard({ child }: Props): VNode {
  const weight = child?.estimate;
  const idealKg = child?.weights.idealKg;
  return (
    <section
      class={`weight-card${weight === undefined ? " weight-card--empty" : ""}`}
      aria-label={messages.weight}
    >
      <Beam weight={weight} marks={child === undefined ? [] : marksOf(child)} />
      <dl class="weight-card__numbers">
        <div class="weight-card__total">
          <dt>{messages.total}</dt>
          <dd>
            {weight === undefined ? (
              <Nothing />
            ) : (
              <Quantity kg={weight.totalKg} measured={weight.rests.includes("scaleKg")} />
            )}
          </dd>
        </div>
        <div>
          <dt>{messages.range}</dt>
          <dd>
            {weight === undefined ? (
              <Nothing />
            ) : weight.low95Kg === weight.high95Kg ? (
              messages.rangeOfScale
            ) : (
              <Quantity fromKg={weight.low95Kg} toKg={weight.high95Kg} />
            )}
          </dd>
        </div>
        <div>
          <dt>{messages.ideal}</dt>
          <dd>
            {weight === undefined ? (
              <Nothing />
            ) : idealKg === undefined ? (
              messages.idealUnknown
            ) : (
              <Quantity kg={idealKg} />
            )}
          </dd>
        </div>
      </dl>
      {child !== undefined && <WeightLine child={child} />}
    </section>
  );
}

/** Ideal weight, the carer's word and the weight of earlier, as far as they are known. */
function marksOf({
  weights: { idealKg },
  measurements: { carerKg, earlier },
}: EstimatedChild): readonly BeamMark[] {
  const marks: BeamMark[] = [];
  if (idealKg !== undefined) marks.push({ kind: "ideal", kg: idealKg });
  if (carerKg !== undefined) marks.push({ kind: "carer", kg: carerKg });
  if (earlier !== undefined) marks.push({ kind: "earlier", kg: earlier.kg });
  return marks;
}

function Nothing(): VNode {
  return (
    <>
      <span aria-hidden="true">–</span>
      <span class="unseen">{messages.noWeightYet}</span>
    </>
  );
}
