import type { VNode } from "preact";
import { messages } from "../../messages/index.ts";
import type { WeighedChild } from "../../state/read-bedside.ts";
import { Beam } from "../beam/beam.tsx";
import { Quantity } from "../quantity/quantity.tsx";

interface Props {
  readonly child: WeighedChild | undefined;
  /** What it rests on. */
  readonly rests: string | undefined;
  /** What the reader must know about it. */
  readonly warnings: readonly string[];
  /** Why there is no weight, where the measurements together are the reason. */
  readonly refusal: string | undefined;
}

/** Total weight, large; its range and the ideal weight beside it. Keeps its size whether it is full or empty. */
export function WeightCard({ child, rests, warnings, refusal }: Props): VNode {
  const weight = child?.estimate;
  const idealKg = child?.idealKg;
  return (
    <>
      <section
        class={`weight-card${weight === undefined ? " weight-card--empty" : ""}`}
        aria-label={messages.weight}
      >
        <Beam weight={weight} idealKg={idealKg} />
        <dl class="weight-card__numbers">
          <div class="weight-card__total">
            <dt>{messages.total}</dt>
            <dd>{weight === undefined ? <Nothing /> : <Quantity kg={weight.totalKg} />}</dd>
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
      </section>
      <div class="weight-card__remarks">
        {refusal !== undefined && <p class="weight-card__refusal">{refusal}</p>}
        {rests !== undefined && <p>{rests}</p>}
        {warnings.map((warning) => (
          <p key={warning} class="weight-card__warning">
            {warning}
          </p>
        ))}
      </div>
    </>
  );
}

function Nothing(): VNode {
  return (
    <>
      <span aria-hidden="true">–</span>
      <span class="unseen">{messages.noWeightYet}</span>
    </>
  );
}
