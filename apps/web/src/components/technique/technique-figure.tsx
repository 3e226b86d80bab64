import { type Technique, techniqueDrawings } from "@steelyard/paper/drawings";
import type { VNode } from "preact";

const lineMm = 1.7;

/** A line drawing of how a measurement is taken. The words beside it say the same, so it is hidden from screen readers. */
export function TechniqueFigure({ technique }: { readonly technique: Technique }): VNode {
  const { widthMm, heightMm, bodies, lines, tape, marks } = techniqueDrawings[technique];
  return (
    <svg class="technique__figure" viewBox={`0 0 ${widthMm} ${heightMm}`} aria-hidden="true">
      <path class="technique__line" d={lines} />
      {bodies.map((tubes) => (
        <g key={tubes[0]?.d}>
          {tubes.map((tube) => (
            <path key={tube.d} class="technique__outline" d={tube.d} stroke-width={tube.widthMm} />
          ))}
          {tubes.map((tube) => (
            <path key={tube.d} class="technique__inside" d={tube.d} stroke-width={tube.widthMm - lineMm} />
          ))}
        </g>
      ))}
      <path class="technique__line" d={lines} />
      <path class="technique__tape" d={tape} />
      <path class="technique__mark" d={marks} />
    </svg>
  );
}
