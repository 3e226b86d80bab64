import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import {
  defaultBodyModel,
  estimateWeight,
  idealWeight,
  type Measurements,
  studentQuantile,
  uncalibratedSite,
} from "@steelyard/core/body";
import { readMeasurements } from "@steelyard/core/entry";
import { centimetres, kilograms, millimetres, months } from "@steelyard/core/units";
import { type InventedChild, inventedChild } from "./invented-child.ts";
import { plainEstimates } from "./plain-estimates.ts";

const here = (name: string): string => fileURLToPath(new URL(name, import.meta.url));
/** Enough to be past the warming up, and not so many that the machine is held for long. */
const sample = 200_000;

/**
 * What the computing costs without any file, per `rows`, for more and more measurements, and beside numpy doing the same sums.
 * Budgets: 1,000,000 children of length and arm in 2 s, of all inputs in 6 s.
 */
export function measureComputing(rows: number): void {
  const children = Array.from({ length: sample }, (_, i) => inventedChild(i));
  const seconds = (work: (child: InventedChild) => void): number => timed(children, work) * (rows / sample);
  const line = (name: string, value: number, budget?: number): void =>
    console.log(
      `  ${name.padEnd(58)} ${value.toFixed(2)} s${budget === undefined ? "" : `  (${(value / budget).toFixed(2)} of the budget of ${budget} s)`}`,
    );
  console.log(`computing alone, ${rows.toLocaleString("en-GB")} children`);
  const typed = (child: InventedChild, sex: string): void => {
    const read = readMeasurements({ lengthCm: String(child.lengthCm), armMm: String(child.armMm), sex });
    if (!read.ok) throw new Error(`Cannot read ${child.lengthCm} and ${child.armMm}`);
    const { lengthCm, sex: own } = read.value.measurements;
    estimate(read.value.measurements);
    if (lengthCm !== undefined) idealWeight({ lengthCm, sex: own });
  };
  line(
    "length and arm",
    seconds((child) => estimate(lengthAndArm(child))),
    2,
  );
  line(
    "the same, with reading the cells and ideal weight",
    seconds((child) => typed(child, "")),
  );
  const known = seconds((child) => estimate(lengthArmAndSex(child)));
  line("length, arm and sex, the estimate alone", known);
  line(
    "length, arm, waist, thigh, calf, age and sex",
    seconds((child) => estimate(girths(child))),
    6,
  );
  line(
    "all that and posture, people, step, build and carer",
    seconds((child) => estimate(everything(child))),
  );
  compareWithPlainLoop({ children, rows, known });
  compareWithNumpy({ children, rows, known });
}

const lengthAndArm = (child: InventedChild): Measurements => ({
  lengthCm: centimetres(child.lengthCm),
  armMm: millimetres(child.armMm),
});

const lengthArmAndSex = (child: InventedChild): Measurements => ({ ...lengthAndArm(child), sex: "f" });

const girths = (child: InventedChild): Measurements => ({
  ...lengthAndArm(child),
  sex: child.sex,
  waistCm: centimetres(child.waistCm),
  thighCm: centimetres(child.thighCm),
  calfCm: centimetres(child.calfCm),
  ageMonths: months(child.ageMonths),
});

const everything = (child: InventedChild): Measurements => ({
  ...girths(child),
  posture: "half-sitting",
  people: 1,
  armStepMm: millimetres(5),
  build: child.build,
  carerKg: kilograms(child.carerKg),
});

function estimate(measurements: Measurements): ReturnType<typeof estimateWeight> {
  const weight = estimateWeight(measurements);
  if (!weight.ok) throw new Error(`Cannot weigh ${JSON.stringify(measurements)}: ${weight.error.type}`);
  return weight;
}

/** Best of three, after one to warm up. */
function timed(children: readonly InventedChild[], work: (child: InventedChild) => void): number {
  const once = (): number => {
    const start = performance.now();
    for (const child of children) work(child);
    return (performance.now() - start) / 1000;
  };
  once();
  return Math.min(once(), once(), once());
}

/** The sums of length, arm and sex as one plain loop, in the same run; checked to be the same sums. */
function compareWithPlainLoop(given: {
  children: readonly InventedChild[];
  rows: number;
  known: number;
}): void {
  const { children, rows, known } = given;
  const loop = plainEstimates();
  const once = (): { seconds: number; kg: Float64Array } => {
    const start = performance.now();
    const kg = loop(children);
    return { kg, seconds: (performance.now() - start) / 1000 };
  };
  const { kg } = once();
  for (let i = 0; i < 1000; i++) {
    const weight = estimate(lengthArmAndSex(children[i] as InventedChild));
    if (!weight.ok) continue;
    const own = [weight.value.totalKg, weight.value.low95Kg, weight.value.high95Kg];
    own.forEach((value, j) => {
      if (Math.abs(value / (kg[3 * i + j] as number) - 1) > 1e-9) {
        throw new Error(`Not the same sums: row ${i} is ${value} and ${kg[3 * i + j]}`);
      }
    });
  }
  const seconds = Math.min(once().seconds, once().seconds, once().seconds) * (rows / children.length);
  console.log(`  ${"the same sums in a plain loop".padEnd(58)} ${seconds.toFixed(2)} s`);
  console.log(
    `  ${Math.round(rows / known).toLocaleString("en-GB")} estimates per second; ratio to the plain loop: ${(known / seconds).toFixed(1)}`,
  );
}

/** The sums of length, arm and sex in numpy, in the same run; checked to be the same sums. */
function compareWithNumpy(given: { children: readonly InventedChild[]; rows: number; known: number }): void {
  const { children, rows, known } = given;
  const { spread, variance } = uncalibratedSite.population;
  const input = JSON.stringify({
    lengthCm: children.map(({ lengthCm }) => lengthCm),
    armMm: children.map(({ armMm }) => armMm),
    reference: here("../packages/core/src/body/reference/by-length.json"),
    shift: variance.shift,
    slope: variance.slope,
    spread,
    t975: studentQuantile({ probability: 0.975, df: defaultBodyModel().byLength.residual.tailDf }),
  });
  const { status, stdout, stderr } = spawnSync("python3", [here("weigh-numpy.py")], {
    input,
    encoding: "utf8",
    maxBuffer: 1e8,
  });
  if (status !== 0) {
    const missing = stderr?.includes("No module named 'numpy'")
      ? "numpy is not installed"
      : (stderr ?? "no python3");
    console.log(`  NOT COMPARED with numpy: ${missing.trim() || "python3 cannot be run"}`);
    return;
  }
  const numpy = JSON.parse(stdout) as { seconds: number } & Record<
    "totalKg" | "low95Kg" | "high95Kg",
    number[]
  >;
  for (const key of ["totalKg", "low95Kg", "high95Kg"] as const) {
    for (const [i, kg] of numpy[key].entries()) {
      const weight = estimate(lengthArmAndSex(children[i] as InventedChild));
      const own = weight.ok ? weight.value[key] : 0;
      if (Math.abs(own / kg - 1) > 1e-9)
        throw new Error(`Not the same sums: ${key} of row ${i} is ${own} and ${kg}`);
    }
  }
  const seconds = numpy.seconds * (rows / children.length);
  console.log(`  ${"the same sums in numpy, whole columns at once".padEnd(58)} ${seconds.toFixed(2)} s`);
  console.log(`  ratio to numpy, length, arm and sex: ${(known / seconds).toFixed(1)}`);
}
