import type { VNode } from "preact";
import { Quantity } from "../../components/quantity/quantity.tsx";
import { readerMessages } from "../../messages/reader.ts";
import type { Comparison } from "./compare-readings.ts";
import { StageHeading } from "./stage-heading.tsx";

interface Props {
  readonly comparison: Comparison;
  readonly onTakeIn: () => void;
  readonly onDiscard: () => void;
}

/** How far two readings agree, in mm and in kg, and what that asks for. */
export function Agreement({ comparison, onTakeIn, onDiscard }: Props): VNode {
  const { readings, weight, needsThird } = comparison;
  return (
    <div class="reader">
      <StageHeading words={readerMessages.agreement} />
      <table class="reader__table">
        <thead>
          <tr>
            <th scope="col">
              <span class="unseen">{readerMessages.what}</span>
            </th>
            <th scope="col">{readerMessages.first}</th>
            <th scope="col">{readerMessages.second}</th>
            <th scope="col">{readerMessages.apart}</th>
          </tr>
        </thead>
        <tbody>
          {readings.map(({ field, first, second, apartMm }) => (
            <tr key={field}>
              <th scope="row">{readerMessages.names[field]}</th>
              <td>{readerMessages.value(field, first)}</td>
              <td>{readerMessages.value(field, second)}</td>
              <td>
                <b>{readerMessages.inMm(apartMm)}</b>
              </td>
            </tr>
          ))}
          {weight !== undefined && (
            <tr>
              <th scope="row">{readerMessages.names.weight}</th>
              <td>
                <Quantity kg={weight.firstKg} />
              </td>
              <td>
                <Quantity kg={weight.secondKg} />
              </td>
              <td>
                <b>
                  <Quantity kg={weight.apartKg} />
                </b>{" "}
                {readerMessages.percent(weight.apartPercent)}
              </td>
            </tr>
          )}
        </tbody>
      </table>
      <div role="status">
        {readings.map(({ field, combined }) => (
          <p key={field} class={combined.needsThird ? "weight-remarks__warning" : undefined}>
            {combined.needsThird
              ? readerMessages.beyond(field, combined.limit)
              : readerMessages.within(field, combined.limit)}
          </p>
        ))}
      </div>
      <p class="reader__source">{readerMessages.limitSource}</p>
      <div class="reader__ways">
        <button class="button reader__main" type="button" onClick={onTakeIn}>
          {needsThird ? readerMessages.takeInThird : readerMessages.takeIn}
        </button>
        <button class="button" type="button" onClick={onDiscard}>
          {readerMessages.discard}
        </button>
      </div>
    </div>
  );
}
