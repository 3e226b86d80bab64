import type { ComponentChildren, VNode } from "preact";

interface Props {
  /** What stands at the left end, in the unit of the tape, and how much is seen. */
  readonly from: number;
  readonly span: number;
  /** Ticks of one, of five and of ten small steps; the numbers stand at every ten. */
  readonly step: number;
  readonly at: number;
  readonly label: string;
  readonly children: (x: number) => ComponentChildren;
}

const tapeWidth = 352;
const top = 58;
const height = 46;

/** A piece of a tape, and what lies against it at `at`. */
export function Tape({ from, span, step, at, label, children }: Props): VNode {
  const scale = tapeWidth / span;
  const xOf = (value: number): number => (value - from) * scale;
  // Counted in whole steps: a sum of tenths drifts.
  const first = Math.max(0, Math.ceil(from / step - 1e-9));
  const last = Math.floor((from + span) / step + 1e-9);
  const ticks = Array.from({ length: last - first + 1 }, (_, i) => first + i);
  const zero = Math.max(0, xOf(0));
  return (
    <svg class="tape" viewBox={`0 0 ${tapeWidth} ${top + height + 2}`} role="img" aria-label={label}>
      <rect class="tape__band" x={zero} y={top} width={tapeWidth - zero} height={height} />
      {ticks.map((tick) => {
        const x = xOf(tick * step);
        const long = tick % 10 === 0 ? 20 : tick % 5 === 0 ? 14 : 8;
        return (
          <g key={tick}>
            <path class="tape__tick" d={`M${x} ${top}v${long}`} />
            {tick % 10 === 0 && x > 8 && x < tapeWidth - 8 && (
              <text class="tape__number" x={x} y={top + 38}>
                {Math.round(tick * step)}
              </text>
            )}
          </g>
        );
      })}
      {children(xOf(at))}
      <path class="tape__edge" d={`M${xOf(at)} 4V${top + 4}`} />
    </svg>
  );
}
