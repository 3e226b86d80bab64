import type { VNode } from "preact";
import { practice } from "../../messages/practice.ts";
import { median, type PracticeResult } from "../../state/practice-result.ts";
import { write } from "./feedback.tsx";

interface Props {
  readonly results: readonly PracticeResult[];
  readonly onAgain: () => void;
}

/** Errors and times of all children read. */
export function Summary({ results, onAgain }: Props): VNode {
  const tenth = (value: number): number => Math.round(value * 10) / 10;
  const rows = [
    [`${practice.length}, cm`, results.map(({ errorCm }) => Math.abs(errorCm))],
    [`${practice.armLabel}, mm`, results.map(({ errorMm }) => Math.abs(errorMm))],
    [practice.seconds, results.map(({ seconds }) => seconds)],
  ] as const;
  const within = results.filter(({ isWithin }) => isWithin.lengthCm && isWithin.armMm).length;
  return (
    <section class="practice__feedback" aria-label={practice.summary(results.length)}>
      <h2>{practice.summary(results.length)}</h2>
      <table>
        <thead>
          <tr>
            <th scope="col">{practice.error}</th>
            <th scope="col">{practice.median}</th>
            <th scope="col">{practice.largest}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(([name, values]) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>{write(tenth(median(values)))}</td>
              <td>{write(tenth(Math.max(0, ...values)))}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p>{practice.within(within, results.length)}</p>
      <button class="button practice__main" type="button" onClick={onAgain}>
        {practice.again}
      </button>
    </section>
  );
}
