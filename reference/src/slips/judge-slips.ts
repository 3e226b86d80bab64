import { type Measurements, recogniseSlips, type Slip } from "@steelyard/core/body";
import { type CleanRow, type Known, knownOf } from "./clean-row.ts";
import type { Slipped, SlipWay } from "./slip-kinds.ts";

/** A real child with one slip made in it. */
export interface SlippedChild {
  readonly row: CleanRow;
  readonly way: SlipWay;
  readonly slipped: readonly Slipped[];
}

/** What came of it. */
export interface JudgedSlip extends SlippedChild {
  /** Something was said. */
  readonly flagged: boolean;
  /** And what was said first puts the numbers right. */
  readonly right: boolean;
}

/** Makes `count` slips of one way, each in a row drawn anew, evenly from the sources that can have it. */
export function makeSlips(given: {
  rows: readonly CleanRow[];
  way: SlipWay;
  count: number;
  uniform: () => number;
}): readonly SlippedChild[] {
  const { rows, way, count, uniform } = given;
  const sources = [...new Set(rows.map(({ source }) => source))]
    .map((source) => rows.filter((row) => row.source === source))
    .filter((own) => own.some(({ measurements }) => way.slip(measurements, () => 0.5) !== undefined));
  const made: SlippedChild[] = [];
  while (made.length < count) {
    const own = sources[made.length % sources.length] as readonly CleanRow[];
    const row = own[Math.floor(uniform() * own.length)] as CleanRow;
    const slipped = way.slip(row.measurements, uniform);
    if (slipped !== undefined) made.push({ row, way, slipped });
  }
  return made;
}

/** Judges a slip with the measurements of `known` and those the slip is in. */
export function judgeSlip(
  child: SlippedChild,
  { known, alarmAt }: { readonly known: Known; readonly alarmAt?: number },
): JudgedSlip {
  const { row, slipped } = child;
  const names = slipped.map(({ measurement }) => measurement);
  const measurements: Measurements = {
    ...knownOf(row.measurements, known, names),
    ...Object.fromEntries(slipped.map(({ measurement, value }) => [measurement, value])),
  };
  const [first] = recogniseSlips(measurements, alarmAt === undefined ? {} : { alarmAt });
  return { ...child, flagged: first !== undefined, right: first !== undefined && putsRight(first, child) };
}

function putsRight({ proposed, changes }: Slip, { row, slipped }: SlippedChild): boolean {
  return (
    changes.length === slipped.length &&
    slipped.every(({ measurement, tolerance }) => {
      const [value, truth] = [proposed[measurement], row.measurements[measurement]];
      return value !== undefined && truth !== undefined && Math.abs(value - truth) <= tolerance;
    })
  );
}
