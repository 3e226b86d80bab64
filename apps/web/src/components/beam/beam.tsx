import {
  densityOfComponents as density,
  type WeightComponent,
  type WeightEstimate,
} from "@steelyard/core/body";
import { formatNumber } from "@steelyard/core/units";
import type { VNode } from "preact";
import { messages } from "../../messages/index.ts";
import { language } from "../../messages/language.ts";
import { type BeamMark, type PlacedMark, placeMarks } from "./beam-marks.ts";
import { type KilogramScale, kilogramScale } from "./kilogram-scale.ts";

interface Props {
  readonly weight: WeightEstimate | undefined;
  /** Ideal weight and what was said or weighed before, in the order of their rows. */
  readonly marks: readonly BeamMark[];
}

const width = 360;
const beamY = 84;
const humpHeight = 62;
const edge = 8;
const rowHeight = 17;
/** About the width of a letter at the size of the labels. */
const letterWidth = 7.2;

/**
 * The weight on the beam of a balance: a kilogram scale that rests on a knife edge at the total weight, with the
 * weight's distribution lying on it. It repeats what the card says in words, so it is hidden from screen readers.
 */
export function Beam({ weight, marks }: Props): VNode {
  return (
    <svg class="beam" viewBox={`0 0 ${width} 124`} aria-hidden="true">
      {weight === undefined ? <BeamAtRest /> : <LoadedBeam weight={weight} marks={marks} />}
    </svg>
  );
}

function BeamAtRest(): VNode {
  const marks = Array.from({ length: 21 }, (_, i) => edge + ((width - 2 * edge) * i) / 20);
  return (
    <>
      <path class="beam__tick" d={marks.map((x, i) => tick(x, i % 5 === 0 ? 9 : 5)).join("")} />
      <line class="beam__bar" x1={edge} x2={width - edge} y1={beamY} y2={beamY} />
      <KnifeEdge x={width / 2} />
    </>
  );
}

function LoadedBeam({ weight, marks }: Props & { readonly weight: WeightEstimate }): VNode {
  const { totalKg, low95Kg, high95Kg, components } = weight;
  const scale = kilogramScale({ low95Kg, high95Kg, marksKg: marks.map(({ kg }) => kg) });
  const x = (kg: number): number =>
    tenth(edge + ((width - 2 * edge) * (kg - scale.lowKg)) / (scale.highKg - scale.lowKg));
  const total = x(totalKg);
  const placed = placeMarks({
    marks,
    x,
    total,
    low: edge,
    high: width - edge,
    widthOf: (kind) => messages.beam[kind].length * letterWidth + 4,
  });
  const ticks = [
    ...minorMarks(scale).map((kg) => tick(x(kg), 5)),
    ...scale.ticksKg.map((kg) => tick(x(kg), 9)),
  ];
  // A number makes way for the knife edge and the ends of the drawing.
  const numbered = scale.ticksKg.filter(
    (kg) => Math.abs(x(kg) - total) > 20 && x(kg) > 10 && x(kg) < width - 10,
  );
  return (
    <>
      {components.length > 0 && (
        <>
          <path
            class="beam__tail"
            d={hump({ scale, x, components, fromKg: scale.lowKg, toKg: scale.highKg })}
          />
          <path class="beam__hump" d={hump({ scale, x, components, fromKg: low95Kg, toKg: high95Kg })} />
        </>
      )}
      <path class="beam__tick" d={ticks.join("")} />
      {numbered.map((kg, i) => (
        <text key={`number-${i + 1}`} class="beam__number" x={x(kg)} y={beamY + 27}>
          {formatNumber(kg, language?.numbers)}
        </text>
      ))}
      <line class="beam__bar" x1={edge} x2={width - edge} y1={beamY} y2={beamY} />
      <line class="beam__range" x1={x(low95Kg)} x2={x(high95Kg)} y1={beamY} y2={beamY} />
      <path class="beam__end" d={`M${x(low95Kg)} ${beamY - 12}v18M${x(high95Kg)} ${beamY - 12}v18`} />
      <line class="beam__total" x1={total} x2={total} y1={beamY - humpHeight - 6} y2={beamY} />
      <KnifeEdge x={total} />
      {placed.map((mark) => (
        <Mark key={mark.kind} {...mark} />
      ))}
    </>
  );
}

function tick(x: number, height: number): string {
  return `M${x} ${beamY}v${height}`;
}

function KnifeEdge({ x }: { readonly x: number }): VNode {
  return <path class="beam__knife" d={`M${x} ${beamY + 2}l10 20h-20z`} />;
}

/** A named weight: its line down to the beam, its sign on top and its word beside that. */
function Mark({ kind, x, row, right, beyond }: PlacedMark): VNode {
  const y = beamY - humpHeight - 6 + row * rowHeight;
  const word = messages.beam[kind];
  return (
    <>
      <line class="beam__named" x1={x} x2={x} y1={y + 4} y2={beamY} />
      <path class="beam__sign" d={beyond === undefined ? signs[kind](x, y) : arrow(x, y, beyond)} />
      <text class="beam__word" x={right ? x + 9 : x - 9} y={y + 5} text-anchor={right ? "start" : "end"}>
        {word}
      </text>
    </>
  );
}

/** A ring for the ideal weight, a square for what was said, a lozenge for what was weighed before. */
const signs: Readonly<Record<BeamMark["kind"], (x: number, y: number) => string>> = {
  ideal: (x, y) => `M${x - 4} ${y}a4 4 0 1 0 8 0a4 4 0 1 0 -8 0`,
  carer: (x, y) => `M${x - 3.5} ${y - 3.5}h7v7h-7z`,
  earlier: (x, y) => `M${x} ${y - 4.75}l4.75 4.75l-4.75 4.75l-4.75 -4.75z`,
};

function arrow(x: number, y: number, beyond: "low" | "high"): string {
  const way = beyond === "high" ? 1 : -1;
  return `M${x + 5 * way} ${y}l${-8 * way} -5v10z`;
}

function minorMarks({ lowKg, highKg, stepKg }: KilogramScale): readonly number[] {
  const minor = stepKg / 5;
  const first = Math.ceil(lowKg / minor);
  return Array.from({ length: Math.floor(highKg / minor) - first + 1 }, (_, i) => (first + i) * minor);
}

/** The outline of the distribution between two weights, standing on the beam. */
function hump({
  scale,
  x,
  components,
  fromKg,
  toKg,
}: {
  readonly scale: KilogramScale;
  readonly x: (kg: number) => number;
  readonly components: readonly WeightComponent[];
  readonly fromKg: number;
  readonly toKg: number;
}): string {
  const points = 72;
  const at = (low: number, high: number): readonly number[] =>
    Array.from({ length: points + 1 }, (_, i) => low + ((high - low) * i) / points);
  const peak = Math.max(...at(scale.lowKg, scale.highKg).map((kg) => density(components, kg)));
  const outline = at(fromKg, toKg).map((kg) => {
    const height = peak > 0 ? (humpHeight * density(components, kg)) / peak : 0;
    return `L${x(kg)} ${tenth(beamY - height)}`;
  });
  return `M${x(fromKg)} ${beamY}${outline.join("")}L${x(toKg)} ${beamY}Z`;
}

function tenth(value: number): number {
  return Math.round(value * 10) / 10;
}
