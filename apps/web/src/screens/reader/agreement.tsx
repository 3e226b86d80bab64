import type { VNode } from "preact";
import { Quantity } from "../../components/quantity/quantity.tsx";
import { readerEn } from "../../messages/reader.en.ts";
import type { Comparison } from "./compare-readings.ts";

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
      <h2>{readerEn.agreement}</h2>
      <table class="reader__table">
        <thead>
          <tr>
            <th scope="col">
              <span class="unseen">{readerEn.what}</span>
            </th>
            <th scope="col">{readerEn.first}</th>
            <th scope="col">{readerEn.second}</th>
            <th scope="col">{readerEn.apart}</th>
          </tr>
        </thead>
        <tbody>
          {readings.map(({ field, first, second, apartMm }) => (
            <tr key={field}>
              <th scope="row">{readerEn.names[field]}</th>
              <td>{readerEn.value(field, first)}</td>
              <td>{readerEn.value(field, second)}</td>
              <td>
                <b>{readerEn.inMm(apartMm)}</b>
              </td>
            </tr>
          ))}
          {weight !== undefined && (
            <tr>
              <th scope="row">{readerEn.names.weight}</th>
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
                {readerEn.percent(weight.apartPercent)}
              </td>
            </tr>
          )}
        </tbody>
      </table>
      <div role="status">
        {readings.map(({ field, combined }) => (
          <p key={field} class={combined.needsThird ? "weight-remarks__warning" : undefined}>
            {combined.needsThird
              ? readerEn.beyond(field, combined.limit)
              : readerEn.within(field, combined.limit)}
          </p>
        ))}
      </div>
      <p class="reader__source">{readerEn.limitSource}</p>
      <div class="reader__ways">
        <button class="button reader__main" type="button" onClick={onTakeIn}>
          {needsThird ? readerEn.takeInThird : readerEn.takeIn}
        </button>
        <button class="button" type="button" onClick={onDiscard}>
          {readerEn.discard}
        </button>
      </div>
    </div>
  );
}
