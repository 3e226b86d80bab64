import { readMeasurements } from "@steelyard/core/entry";
import type { VNode } from "preact";
import { useId, useLayoutEffect, useRef, useState } from "preact/hooks";
import { practice } from "../../messages/practice.ts";
import type { PracticeChild } from "../../state/practice-children.ts";
import type { Reading } from "../../state/practice-result.ts";
import { Drawings } from "./drawings.tsx";

interface Props {
  readonly child: PracticeChild;
  readonly number: number;
  readonly of: number;
  readonly isDone: boolean;
  readonly onRead: (reading: Reading, seconds: number) => void;
}

/** One child to be read; the time runs from the drawing to the check. */
export function PracticeTask({ child, number, of, isDone, onRead }: Props): VNode {
  const id = useId();
  const [lengthCm, setLength] = useState("");
  const [armMm, setArm] = useState("");
  const [isUnread, setUnread] = useState(false);
  const begun = useRef(0);
  const heading = useRef<HTMLHeadingElement>(null);
  useLayoutEffect(() => {
    begun.current = performance.now();
    heading.current?.focus();
  }, []);
  const check = (): void => {
    const reading = readTexts({ lengthCm, armMm });
    setUnread(reading === undefined);
    if (reading !== undefined) onRead(reading, (performance.now() - begun.current) / 1000);
  };
  return (
    <section aria-labelledby={id}>
      <h2 id={id} ref={heading} tabIndex={-1}>
        {practice.child(number, of)}
      </h2>
      <p class="practice__who">
        {practice.ages[child.sex]}, {ageOf(child)}, {practice.postures[child.posture]}
        {child.startCm > 0 && (
          <>
            . <b>{practice.offset}</b>
          </>
        )}
      </p>
      <Drawings child={child} />
      <form
        class="practice__entry"
        onSubmit={(submit) => {
          submit.preventDefault();
          if (!isDone) check();
        }}
      >
        <label>
          {practice.length}, cm
          <input
            inputMode="decimal"
            autocomplete="off"
            maxLength={20}
            value={lengthCm}
            readOnly={isDone}
            aria-describedby={`${id}-unread`}
            onInput={({ currentTarget }) => setLength(currentTarget.value)}
          />
        </label>
        <label>
          {practice.armLabel}, mm
          <input
            inputMode="decimal"
            autocomplete="off"
            maxLength={20}
            value={armMm}
            readOnly={isDone}
            aria-describedby={`${id}-unread`}
            onInput={({ currentTarget }) => setArm(currentTarget.value)}
          />
        </label>
        {!isDone && (
          <button class="button practice__main" type="submit">
            {practice.check}
          </button>
        )}
        <p id={`${id}-unread`} role="alert">
          {isUnread && practice.unread}
        </p>
      </form>
    </section>
  );
}

/** By the same rules as at the bedside: comma or point, units, sums of two parts. */
function readTexts(texts: { readonly lengthCm: string; readonly armMm: string }): Reading | undefined {
  const read = readMeasurements(texts);
  if (!read.ok) return undefined;
  const { lengthCm, armMm } = read.value.measurements;
  return lengthCm === undefined || armMm === undefined ? undefined : { lengthCm, armMm };
}

function ageOf({ ageMonths }: PracticeChild): string {
  return ageMonths < 24 ? practice.ages.months(ageMonths) : practice.ages.years(Math.floor(ageMonths / 12));
}
