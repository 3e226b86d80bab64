import type { VNode } from "preact";
import { TechniqueFigure } from "../../components/technique/technique-figure.tsx";
import { practice } from "../../messages/practice.ts";
import type { PracticeChild } from "../../state/practice-children.ts";
import { Tape } from "./tape.tsx";

/** Centimetres and millimetres in sight around what is to be read. */
const spanCm = 8;
const spanMm = 60;

/** The child as it lies or sits, and the three places to read. */
export function Drawings({ child }: { readonly child: PracticeChild }): VNode {
  const { lengthCm, armMm, startCm, posture } = child;
  const heel = startCm + lengthCm;
  return (
    <div class="practice__drawings">
      <TechniqueFigure technique={posture === "lying" ? "lying-two" : posture} />
      <figure>
        <figcaption>{practice.crown}</figcaption>
        <Tape from={startCm - 3} span={spanCm} step={0.1} at={startCm} label={practice.crownAlt}>
          {(x) => (
            // The head from the side: crown to the left, against the line.
            <path
              class="tape__body"
              d={`M${x + 120} 50C${x + 60} 54 ${x + 4} 52 ${x} 30C${x} 12 ${x + 40} 4 ${x + 120} 6`}
            />
          )}
        </Tape>
      </figure>
      <figure>
        <figcaption>{practice.heel}</figcaption>
        {/* Never in the middle: the eye has to find it. */}
        <Tape from={Math.floor(heel) - 4} span={spanCm} step={0.1} at={heel} label={practice.heelAlt}>
          {(x) => (
            // The foot upright: heel against the line, toes above.
            <path
              class="tape__body"
              d={`M${x - 150} 50H${x - 12}C${x - 3} 50 ${x} 46 ${x} 40C${x} 28 ${x - 3} 18 ${x} 5C${x - 12} 2 ${x - 17} 8 ${x - 19} 16C${x - 24} 28 ${x - 40} 27 ${x - 150} 24`}
            />
          )}
        </Tape>
      </figure>
      <figure>
        <figcaption>{practice.arm}</figcaption>
        <Tape
          from={Math.floor(armMm / 10) * 10 - 25}
          span={spanMm}
          step={1}
          at={armMm}
          label={practice.armAlt}
        >
          {(x) => (
            // The beginning of the tape comes round the arm and lies on it: its index points at the reading.
            <>
              <path class="tape__body" d={`M0 14H${x - 8}L${x} 36L${x - 8} 58H0`} />
              <path class="tape__index" d={`M${x - 6} 44h12l-6 13z`} />
            </>
          )}
        </Tape>
      </figure>
    </div>
  );
}
