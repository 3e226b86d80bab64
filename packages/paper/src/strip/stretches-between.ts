import { contains, type TurnedBox } from "../drawing/turned-box.ts";
import { curveAt, curveEndCm, type Stretch } from "./curve-path.ts";
import type { Label } from "./place-labels.ts";
import type { Curve } from "./trace-contours.ts";

/** The stretches of a curve that no label stands on. */
export function stretchesBetween(given: {
  readonly curve: Curve;
  readonly labels: readonly Label[];
  readonly widthMm: number;
  readonly within: Stretch;
}): readonly Stretch[] {
  const { curve, labels, widthMm, within } = given;
  const fromCm = Math.max(within.fromCm, curve.fromCm);
  const toCm = Math.min(within.toCm, curveEndCm(curve));
  const gaps = labels
    .flatMap(({ box }) => gapOf({ curve, box, widthMm, fromCm, toCm }))
    .sort((a, b) => a.fromCm - b.fromCm);
  const stretches: Stretch[] = [];
  let at = fromCm;
  for (const gap of gaps) {
    if (gap.fromCm > at) stretches.push({ fromCm: at, toCm: gap.fromCm });
    at = Math.max(at, gap.toCm);
  }
  if (at < toCm) stretches.push({ fromCm: at, toCm });
  return stretches;
}

const gapStepCm = 0.02;

function gapOf(given: {
  curve: Curve;
  box: TurnedBox;
  widthMm: number;
  fromCm: number;
  toCm: number;
}): readonly Stretch[] {
  const { curve, box, widthMm, fromCm, toCm } = given;
  const ys = box.map(([, y]) => y / 10);
  const low = Math.max(Math.min(...ys), fromCm);
  const high = Math.min(Math.max(...ys), toCm);
  if (low >= high) return [];
  const xs = box.map(([x]) => x / widthMm);
  const ends = [curveAt(curve, low).across, curveAt(curve, high).across];
  if (Math.max(...ends) < Math.min(...xs) - 0.01 || Math.min(...ends) > Math.max(...xs) + 0.01) return [];
  let first: number | undefined;
  let last = low;
  for (let cm = low; cm <= high + 1e-9; cm += gapStepCm) {
    if (!contains(box, [curveAt(curve, cm).across * widthMm, cm * 10])) continue;
    first ??= cm;
    last = cm;
  }
  return first === undefined ? [] : [{ fromCm: first - gapStepCm, toCm: last + gapStepCm }];
}
