import { recogniseSlips } from "@steelyard/core/body";
import { seededRandom } from "../seeded-random.ts";
import { type CleanRow, type Known, knownOf } from "./clean-row.ts";
import { type JudgedSlip, judgeSlip, makeSlips, type SlippedChild } from "./judge-slips.ts";
import type { SlipWay } from "./slip-kinds.ts";

const seed = 20261125;

/** Makes slips in these rows, `perKind` of each kind, shared evenly among its ways; the same slips for the same rows. */
export function simulateSlips(given: {
  rows: readonly CleanRow[];
  ways: readonly SlipWay[];
  perKind: number;
}): readonly SlippedChild[] {
  const { rows, ways, perKind } = given;
  const uniform = seededRandom(seed);
  return ways.flatMap((way) => {
    const siblings = ways.filter(({ kind }) => kind === way.kind).length;
    return makeSlips({ rows, way, count: perKind / siblings, uniform });
  });
}

/** Judges every slip with the measurements of `known`. */
export function judgeAll(
  slips: readonly SlippedChild[],
  { known, alarmAt }: { readonly known: Known; readonly alarmAt?: number },
): readonly JudgedSlip[] {
  return slips.map((slip) => judgeSlip(slip, { known, ...(alarmAt === undefined ? {} : { alarmAt }) }));
}

export interface FalseAlarms {
  readonly rows: number;
  readonly alarms: number;
  /** Of these, alarms that come with a correction (and not only with a doubt). */
  readonly corrections: number;
}

/** What is said of rows nothing was done to. Every alarm counts as false, although some rows have real slips. */
export function falseAlarms(
  rows: readonly CleanRow[],
  { known, alarmAt }: { readonly known: Known; readonly alarmAt?: number },
): FalseAlarms {
  const firsts = rows.flatMap((row) => {
    const [first] = recogniseSlips(
      knownOf(row.measurements, known),
      alarmAt === undefined ? {} : { alarmAt },
    );
    return first === undefined ? [] : [first];
  });
  return {
    rows: rows.length,
    alarms: firsts.length,
    corrections: firsts.filter(({ type }) => type !== "outlier").length,
  };
}

/** Share in per cent. */
export function percent(part: number, whole: number): number {
  return (100 * part) / whole;
}
