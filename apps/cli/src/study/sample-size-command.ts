import { readFile } from "node:fs/promises";
import { formatNumber } from "@steelyard/core/units";
import { weighedChildren } from "@steelyard/study/calibration";
import { inventStudy } from "@steelyard/study/example";
import { importStudy, openStudyFile } from "@steelyard/study/import";
import { ENGLISH_REPORT } from "@steelyard/study/report";
import {
  childrenForCalibration,
  childrenForLimits,
  childrenForNonInferiority,
  childrenForShare,
  childrenForShareWithin,
  powerByModel,
} from "@steelyard/study/sample-size";
import { Command } from "commander";
import { CommandFailure, EXIT } from "../exit-status.ts";
import { fileFailure } from "../file-failure.ts";
import { EXIT_STATUS_HELP, helpCautions } from "../help-text.ts";
import { readMap } from "./read-map.ts";

const HELP = `
Shares and margins are percentages and points. Power and confidence are those of
the usual study (80 % and 95 %) unless you say otherwise.

Examples:
  steelyard study sample-size share --target 70 --expected 80
  steelyard study sample-size limits --within 0.25
  steelyard study sample-size non-inferiority --differ 20 --margin 5
  steelyard study sample-size calibration --sd 7
  steelyard study sample-size model pilot.csv --size 150 --target 60 --seed 1

${EXIT_STATUS_HELP}`;

type Texts = Readonly<Record<string, string | undefined>>;

/** `steelyard study sample-size share --target 70 --expected 80`. */
export function createSampleSizeCommand(): Command {
  const command = new Command("sample-size")
    .description("How many children a study needs, or what power it has.")
    .addHelpText("after", () => `${HELP}\n${helpCautions()}`);
  command
    .command("share")
    .description(
      "Prove a share of children within 10 % (or 20 %) above a target, or know it within +/- points.",
    )
    .option("--target <percent>", "the share to prove")
    .option("--expected <percent>", "the share you expect")
    .option("--power <percent>", "the chance to prove it", "80")
    .option("--within <points>", "in place of a target: know the share within +/- so many points")
    .action((_: Texts, own: Command) => {
      const options = allOptions(own);
      const expected = read(options, "expected", 0.1, 99.9) / 100;
      if (options.within !== undefined) {
        const halfWidth = read(options, "within", 0.1, 49) / 100;
        answer(childrenForShareWithin({ expected, halfWidth }), "a Wilson interval that narrow");
        return;
      }
      const target = read(options, "target", 0.1, 99.9) / 100;
      const power = read(options, "power", 1, 99.9) / 100;
      answer(
        computed(() => childrenForShare({ target, expected, power })),
        `the lower end of Wilson's interval above ${options.target} % with ${options.power} % power (exact)`,
      );
    });
  command
    .command("limits")
    .description("Know the limits of agreement within +/- so many SDs of the differences.")
    .option("--within <SDs>", "half-width of the interval of a limit, such as 0.25")
    .action((_: Texts, own: Command) => {
      const options = allOptions(own);
      answer(
        childrenForLimits({ halfWidthSd: read(options, "within", 0.001, 10) }),
        "limits known that well",
      );
    });
  command
    .command("non-inferiority")
    .description("Show that a method is not worse than another on the same children.")
    .option("--differ <percent>", "children within 10 % by one of the two methods only")
    .option("--difference <points>", "share of the new method minus that of the other", "0")
    .option("--margin <points>", "by how much it may be worse")
    .option("--power <percent>", "the chance to show it", "80")
    .action((_: Texts, own: Command) => {
      const options = allOptions(own);
      answer(
        computed(() =>
          childrenForNonInferiority({
            discordant: read(options, "differ", 0.1, 100) / 100,
            difference: read(options, "difference", -99, 99) / 100,
            margin: read(options, "margin", 0.1, 99) / 100,
            power: read(options, "power", 1, 99.9) / 100,
          }),
        ),
        `${options.power} % power at a one-sided 2.5 %`,
      );
    });
  command
    .command("calibration")
    .description("Know the shift of a site's calibration within +/- so many per cent.")
    .option("--sd <percent>", "SD of the percentage error")
    .option("--within <percent>", "how well", "1")
    .action((_: Texts, own: Command) => {
      const options = allOptions(own);
      answer(
        childrenForCalibration({
          sdPercent: read(options, "sd", 0.1, 100),
          withinPercent: read(options, "within", 0.01, 50),
        }),
        `a shift known within ${options.within} %`,
      );
    });
  command
    .command("model")
    .description("Power by simulation from the body model, for children like those of a pilot file.")
    .argument("<file>", 'a pilot study, or "example"; its scale weights are not used')
    .option("--size <children>", "how many the study shall weigh")
    .option("--target <percent>", "the share to prove")
    .option("--within <percent>", "limit of the error", "10")
    .option("--seed <number>", "of what is drawn", "1")
    .option("--studies <number>", "how many are simulated", "1000")
    .option("--map <column=field:unit>", "what a column is and its unit; repeatable")
    .action((path: string, _: unknown, own: Command) => {
      const { map = [], ...options } = own.optsWithGlobals<{ readonly map?: readonly string[] }>();
      return simulate(path, options as Texts, map);
    });
  return command;
}

/** `study` takes --margin, --seed and --map too, and keeps those of its sub-commands for them. */
function allOptions(own: Command): Texts {
  return own.optsWithGlobals<Texts>();
}

async function simulate(path: string, options: Texts, map: readonly string[]): Promise<void> {
  const given = {
    size: whole(options, "size", 1, 1e6),
    percent: read(options, "within", 1, 99),
    target: read(options, "target", 0.1, 99.9) / 100,
    seed: whole(options, "seed", 0, 4294967295),
    studies: whole(options, "studies", 10, 1e5),
  };
  const bytes =
    path === "example"
      ? new TextEncoder().encode(inventStudy())
      : await readFile(path).catch((error: unknown) => {
          throw fileFailure("read", path, error);
        });
  const opened = await openStudyFile(bytes);
  const study = opened.ok ? importStudy(opened.value, { changes: map.map(readMap) }) : opened;
  if (!study.ok)
    throw new CommandFailure(
      EXIT.notServed,
      `Cannot read ${path}: ${ENGLISH_REPORT.issue(study.error)} Nothing was computed.`,
    );
  const children = weighedChildren(study.value.table).map(({ measurements }) => measurements);
  const power = powerByModel({ children, ...given });
  if (!power.ok)
    throw new CommandFailure(
      EXIT.notServed,
      `The body model serves none of ${formatNumber(children.length)} children.`,
    );
  const { served, leftOut, expected } = power.value;
  process.stdout.write(
    `${tenth(100 * power.value.power)} % power: of ${formatNumber(given.studies)} studies of ${formatNumber(given.size)} children, drawn with seed ${options.seed},
so many prove a share above ${options.target} % within ${options.within} %. The model, uncalibrated, expects ${tenth(100 * expected)} %
of such children (${formatNumber(served)} served, ${formatNumber(leftOut)} not). It rests on the model being right about them.\n`,
  );
}

function answer(children: number, why: string): void {
  process.stdout.write(`${formatNumber(children)} children: ${why}.\n`);
}

function whole(options: Texts, name: string, from: number, to: number): number {
  const value = read(options, name, from, to);
  if (!Number.isInteger(value))
    throw new CommandFailure(EXIT.wrongUsage, `--${name}: "${options[name]}" is no whole number.`);
  return value;
}

function read(options: Texts, name: string, from: number, to: number): number {
  const text = options[name];
  const value = Number(text);
  if (text === undefined || text.trim() === "" || !(value >= from && value <= to))
    throw new CommandFailure(
      EXIT.wrongUsage,
      `--${name}: ${text === undefined ? "give a number" : `"${text}" is no number`} from ${formatNumber(from)} to ${formatNumber(to)}.`,
    );
  return value;
}

/** What cannot be computed ends the command with the reason. */
function computed<T>(compute: () => T): T {
  try {
    return compute();
  } catch (error) {
    if (error instanceof RangeError) throw new CommandFailure(EXIT.wrongUsage, `${error.message}.`);
    throw error;
  }
}

function tenth(value: number): string {
  return formatNumber(Math.round(value * 10) / 10);
}
