import { defaultBodyModel, estimateWeight } from "@steelyard/core/body";
import { centimetres, millimetres } from "@steelyard/core/units";
import { drawStrip, pageSizes, renderPdf, type StripMedium } from "@steelyard/paper";
import { describe, expect, it } from "vitest";
import { createArmAxis } from "../src/strip/arm-axis.ts";
import { contourLevels } from "../src/strip/contour-levels.ts";
import { layOutRoll, layOutSheets, type StripLayout } from "../src/strip/strip-layout.ts";
import { type ReadPage, readPdf } from "./support/read-pdf.ts";
import { rendering, sampleContext } from "./support/sample-context.ts";
import { calibratedSite } from "./support/sample-site.ts";

/** `STEELYARD_ALL_POINTS=1 npm run unit -- strip-reading` reads all three strips at as many. */
const allPoints = 10_000;
const fewerPoints = process.env.STEELYARD_ALL_POINTS === undefined ? 2_500 : allPoints;
const axis = createArmAxis(defaultBodyModel());

interface Case {
  readonly name: string;
  readonly medium: StripMedium;
  readonly calibrated?: boolean;
  readonly points: number;
}

const cases: readonly Case[] = [
  { name: "A4", medium: { sheet: pageSizes.a4 }, points: allPoints },
  { name: "A4 with a calibration", medium: { sheet: pageSizes.a4 }, calibrated: true, points: fewerPoints },
  { name: "a roll of 610 mm", medium: { rollWidthMm: 610 }, points: fewerPoints },
];

/** The same numbers every time: a linear congruential generator (Numerical Recipes' constants). */
function createRandom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

type Subpath = readonly (readonly [number, number])[];

/** Lines followed through the gap in which their label stands, as a reader does: on to the piece that goes on from its end. */
function bridged(subpaths: readonly Subpath[]): readonly Subpath[] {
  const joined: (readonly [number, number])[][] = [];
  for (const subpath of subpaths) {
    const before = joined.at(-1);
    const end = before?.at(-1);
    const start = subpath[0];
    const goesOn =
      end !== undefined &&
      start !== undefined &&
      start[1] > end[1] &&
      Math.hypot(start[0] - end[0], start[1] - end[1]) < longestLabelMm;
    if (before !== undefined && goesOn) before.push(...subpath);
    else joined.push([...subpath]);
  }
  return joined;
}

/** "122.5 kg" at its size, with the air round it. */
const longestLabelMm = 16;

/** The lines of one look on a page: x by mm of strip, from the pieces that cross it. */
type Crossings = (lengthCm: number) => readonly number[];

function crossingsOf(given: {
  page: ReadPage;
  layout: StripLayout;
  index: number;
  widthsMm: readonly number[];
  colours?: readonly string[];
}): Crossings {
  const { page, layout, index, widthsMm, colours = ["#000000"] } = given;
  const { fromCm } = layout.pages[index] as StripLayout["pages"][number];
  const rows = new Map<number, [number, number, number, number][]>();
  const left = layout.chartLeftMm - 0.01;
  const right = layout.chartLeftMm + layout.chartWidthMm + 0.01;
  for (const path of page.paths) {
    const isOurs =
      path.painted === "stroke" &&
      !path.dashed &&
      colours.includes(path.strokeColour) &&
      widthsMm.some((own) => Math.abs(own - path.lineWidthMm) < 0.005);
    // One path holds all the lines of a look; single ticks and rules are other paths.
    if (!isOurs || path.subpaths.length < 4) continue;
    for (const subpath of bridged(path.subpaths)) {
      for (let i = 1; i < subpath.length; i += 1) {
        const [x1 = 0, y1 = 0] = subpath[i - 1] ?? [];
        const [x2 = 0, y2 = 0] = subpath[i] ?? [];
        if (Math.max(x1, x2) < left || Math.min(x1, x2) > right || y1 === y2) continue;
        for (let row = Math.floor(Math.min(y1, y2)); row <= Math.floor(Math.max(y1, y2)); row += 1) {
          const own = rows.get(row) ?? [];
          own.push([x1, y1, x2, y2]);
          rows.set(row, own);
        }
      }
    }
  }
  return (lengthCm) => {
    const y = layout.topMm + (lengthCm - fromCm) * 10;
    const xs: number[] = [];
    for (const [x1, y1, x2, y2] of rows.get(Math.floor(y)) ?? []) {
      if ((y1 <= y && y < y2) || (y2 <= y && y < y1)) xs.push(x1 + ((y - y1) / (y2 - y1)) * (x2 - x1));
    }
    return xs.sort((a, b) => a - b);
  };
}

describe.each(cases)(
  "the length strip on $name, read back from its PDF",
  ({ medium, calibrated, points }) => {
    it(`says within 2 % what the model says, at ${points} random points`, async () => {
      const site = calibrated ? calibratedSite() : undefined;
      const context = await sampleContext(site === undefined ? {} : { site });
      const drawing = drawStrip({ ...context, medium, site });
      const layout = "sheet" in medium ? layOutSheets(medium.sheet) : layOutRoll(medium);
      if (!drawing.ok || !layout.ok) throw new Error("Cannot draw the sample");
      const pages = await readPdf(await renderPdf(drawing.value, { ...context, ...rendering }));
      const lines = pages.map((page, index) =>
        crossingsOf({ page, layout: layout.value, index, widthsMm: [0.15, 0.42] }),
      );
      const arms = pages.map((page, index) =>
        crossingsOf({
          page,
          layout: layout.value,
          index,
          widthsMm: [0.12, 0.18],
          colours: ["#bdbdbd", "#8c8c8c"],
        }),
      );
      const { chartLeftMm, chartWidthMm } = layout.value;
      const weightAt = (lengthCm: number, x: number): number => {
        const armMm = axis.armMm({ lengthCm, across: (x - chartLeftMm) / chartWidthMm });
        return modelKg(lengthCm, armMm, site);
      };
      const random = createRandom(20261125);
      let worst = 0;
      let offLevel = 0;
      let read = 0;
      while (read < points) {
        const lengthCm = 45.2 + random() * (199.9 - 45.2);
        const index = layout.value.pages.findIndex(
          ({ fromCm, toCm }) => lengthCm > fromCm && lengthCm < toCm,
        );
        const { lowMm, highMm } = axis.fitted(lengthCm);
        const armMm = lowMm + random() * (highMm - lowMm);
        // Where the arm is, found between the drawn lines of equal arm.
        const x = xOfArm({
          lengthCm,
          armMm,
          xs: (arms[index] as Crossings)(lengthCm),
          chartLeftMm,
          chartWidthMm,
        });
        if (x === undefined) continue;
        read += 1;
        const xs = (lines[index] as Crossings)(lengthCm);
        const nearest = xs.reduce(
          (best, own) => (Math.abs(own - x) < Math.abs(best - x) ? own : best),
          Infinity,
        );
        // The line stands for a weight of the ladder; how far from it says how true the line is drawn.
        const atLine = weightAt(lengthCm, nearest);
        const level = levelNear(atLine);
        offLevel = Math.max(offLevel, Math.abs(atLine / level - 1));
        worst = Math.max(worst, Math.abs(level / modelKg(lengthCm, armMm, site) - 1));
      }
      expect(offLevel).toBeLessThan(0.003);
      expect(worst).toBeLessThan(0.02);
    });
  },
);

const levels = contourLevels({ lowKg: 0.5, highKg: 300 });

function levelNear(kg: number): number {
  return levels.reduce((best, own) => (Math.abs(own.kg - kg) < Math.abs(best - kg) ? own.kg : best), 0);
}

function modelKg(
  lengthCm: number,
  armMm: number,
  site: ReturnType<typeof calibratedSite> | undefined,
): number {
  const measurements = { lengthCm: centimetres(lengthCm), armMm: millimetres(armMm) };
  const estimate = estimateWeight(measurements, site === undefined ? {} : { site });
  if (!estimate.ok) throw new Error(`No weight at ${lengthCm} cm and ${armMm} mm`);
  return estimate.value.totalKg;
}

/** The place of an arm between the two drawn lines of equal arm beside it, or undefined where a label stands on one of them. */
function xOfArm(given: {
  lengthCm: number;
  armMm: number;
  xs: readonly number[];
  chartLeftMm: number;
  chartWidthMm: number;
}): number | undefined {
  const { lengthCm, armMm, xs, chartLeftMm, chartWidthMm } = given;
  const step = armMm < 200 ? 5 : 10;
  const below = Math.floor(armMm / step) * step;
  const find = (arm: number): number | undefined => {
    const wanted = chartLeftMm + axis.across({ lengthCm, armMm: arm }) * chartWidthMm;
    return xs.find((x) => Math.abs(x - wanted) < 0.1);
  };
  const [left, right] = [find(below), find(below + step)];
  if (left === undefined || right === undefined) return undefined;
  return left + ((armMm - below) / step) * (right - left);
}
