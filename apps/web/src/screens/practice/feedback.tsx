import { formatNumber } from "@steelyard/core/units";
import type { VNode } from "preact";
import { useLayoutEffect, useRef } from "preact/hooks";
import { writeQuantity } from "../../components/quantity/quantity.tsx";
import { language } from "../../messages/language.ts";
import { practice } from "../../messages/practice.ts";
import type { PracticeResult } from "../../state/practice-result.ts";

interface Props {
  readonly result: PracticeResult;
  readonly isLast: boolean;
  readonly onNext: () => void;
}

/** How far off the reading was, what that does to the weight, and how long it took. */
export function Feedback({ result, isLast, onNext }: Props): VNode {
  const { child, lengthCm, armMm, errorCm, errorMm, limits, isWithin, readKg, drawnKg, seconds } = result;
  const button = useRef<HTMLButtonElement>(null);
  // Before the next key can fall: whoever types on must not type into nothing.
  useLayoutEffect(() => button.current?.focus({ preventScroll: false }), []);
  const kg = (value: number | undefined): string =>
    value === undefined ? practice.noWeight : writeQuantity({ kg: value });
  const rows = [
    [practice.length, `${write(lengthCm)} cm`, `${write(child.lengthCm)} cm`, `${signed(errorCm)} cm`],
    [practice.armLabel, `${write(armMm)} mm`, `${write(child.armMm)} mm`, `${signed(errorMm)} mm`],
    [
      practice.weight,
      kg(readKg),
      kg(drawnKg),
      readKg === undefined || drawnKg === undefined
        ? ""
        : `${signed(Math.round((1000 * (readKg - drawnKg)) / drawnKg) / 10)} %`,
    ],
  ] as const;
  const isTens = [errorCm, errorMm].some((error) => Math.abs(Math.abs(error) - 10) <= 1);
  return (
    <section class="practice__feedback" aria-label={practice.result}>
      <table>
        <thead>
          <tr>
            <th scope="col">{practice.result}</th>
            <th scope="col">{practice.yours}</th>
            <th scope="col">{practice.drawn}</th>
            <th scope="col">{practice.error}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(([name, read, drawn, error]) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>{read}</td>
              <td>{drawn}</td>
              <td>
                <b>{error}</b>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <div role="status">
        {isWithin.lengthCm && isWithin.armMm && <p class="practice__good">{practice.good}</p>}
        {!isWithin.lengthCm && <p class="practice__off">{practice.off.lengthCm(write(limits.lengthCm))}</p>}
        {!isWithin.armMm && <p class="practice__off">{practice.off.armMm(write(limits.armMm))}</p>}
        {isTens && <p class="practice__off">{practice.tens}</p>}
        <p class="practice__who">{practice.time(write(Math.round(seconds)))}</p>
      </div>
      <button ref={button} class="button practice__main" type="button" onClick={onNext}>
        {isLast ? practice.finish : practice.next}
      </button>
    </section>
  );
}

export function write(value: number): string {
  return formatNumber(value, language?.numbers);
}

function signed(value: number): string {
  return value > 0 ? `+${write(value)}` : write(value);
}
