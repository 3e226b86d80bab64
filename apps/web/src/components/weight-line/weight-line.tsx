import type { EstimatedChild } from "@steelyard/core/body";
import type { VNode } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { messages } from "../../messages/index.ts";
import { Quantity } from "../quantity/quantity.tsx";

interface Props {
  readonly child: EstimatedChild;
}

/**
 * The weight in one line at the top of the window while its card is out of sight; a touch leads back to it. It lies over the page
 * and takes no room in it, so nothing moves when it comes.
 */
export function WeightLine({ child: { estimate, weights } }: Props): VNode {
  const mark = useRef<HTMLSpanElement>(null);
  const [isAway, setAway] = useState(false);
  useEffect(() => {
    if (mark.current === null || typeof IntersectionObserver === "undefined") return;
    const watch = new IntersectionObserver(([entry]) => {
      // Scrolled past it, not the other way.
      if (entry !== undefined) setAway(!entry.isIntersecting && entry.boundingClientRect.top < 0);
    });
    watch.observe(mark.current);
    return () => watch.disconnect();
  }, []);
  const { totalKg, low95Kg, high95Kg, rests } = estimate;
  return (
    <>
      {/* Stands at the foot of the card's drawing: the number is out of sight soon after it. */}
      <span ref={mark} class="weight-line__mark" />
      <button
        class={`weight-line screen-only${isAway ? " weight-line--away" : ""}`}
        type="button"
        tabIndex={-1}
        aria-hidden="true"
        onClick={() => scrollTo({ top: 0 })}
      >
        <b>
          <Quantity kg={totalKg} measured={rests.includes("scaleKg")} />
        </b>
        {low95Kg !== high95Kg && (
          <span>
            <Quantity fromKg={low95Kg} toKg={high95Kg} />
          </span>
        )}
        {weights.idealKg !== undefined && (
          <span>
            {messages.beam.ideal} <Quantity kg={weights.idealKg} />
          </span>
        )}
      </button>
    </>
  );
}
