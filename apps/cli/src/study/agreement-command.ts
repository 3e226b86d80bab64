import { basename, dirname } from "node:path";
import { defaultMeasurementErrors, type Posture } from "@steelyard/core/body";
import { formatNumber } from "@steelyard/core/units";
import {
  intraclassCorrelations,
  measurementErrorsFromReadings,
  repeatedLimits,
  technicalError,
  weightedKappa,
} from "@steelyard/study/agreement";
import { Command, Option } from "commander";
import { CommandFailure, EXIT } from "../exit-status.ts";
import { EXIT_STATUS_HELP, helpCautions } from "../help-text.ts";
import { numbersOf, readReadings } from "./read-readings.ts";
import { writeFiles } from "./write-files.ts";

const HELP = `
One row a child. --readings names the columns of the readers, or of the rounds of
one reader, of one measurement: technical error, its share of the mean,
reliability and the six intraclass correlations with 95 % intervals. Classes
(--as class) of two readers give kappa, plain and weighted. --readings with
--second compares two methods that each read a child several times.

With --as arm-mm or --as length-cm and -o, the technical error takes the place of
the default in a file of measurement errors, which calibrate takes with --errors
and writes into the profile that --site takes.

Examples:
  steelyard study agreement readers.csv --readings imke tomas bao --as arm-mm \\
    -o errors.json
  steelyard study agreement readers.csv --readings a1 a2 --second b1 b2
  steelyard study agreement colours.csv --readings imke tomas --as class \\
    --classes lean middling stout

${EXIT_STATUS_HELP}`;

interface AgreementOptions {
  readonly readings?: readonly string[];
  readonly second?: readonly string[];
  readonly true: "constant" | "varying";
  readonly as?: "arm-mm" | "length-cm" | "class";
  readonly classes?: readonly string[];
  readonly posture: Posture;
  readonly people: "one" | "two";
  readonly sheet?: string;
  readonly output?: string;
}

/** `steelyard study agreement readers.csv --readings imke tomas`. */
export function createAgreementCommand(): Command {
  return (
    new Command("agreement")
      .description(
        "Judge how well readers agree, and turn it into the errors that the body model reckons with.",
      )
      .argument("<file>", "one row a child, a column for each reader or round")
      .option("--readings <column...>", "columns of the readers, or of the first method")
      .option("--second <column...>", "columns of a second method's readings")
      .addOption(
        new Option("--true <value>", "whether what is read stays the same between the rounds of two methods")
          .choices(["constant", "varying"])
          .default("constant"),
      )
      .addOption(new Option("--as <what>", "what is read").choices(["arm-mm", "length-cm", "class"]))
      .option("--classes <name...>", "the classes in their order")
      .addOption(
        new Option("--posture <posture>", "of the lengths")
          .choices(["lying", "half-sitting", "seated"])
          .default("lying"),
      )
      .addOption(
        new Option("--people <number>", "who measured the lengths").choices(["one", "two"]).default("two"),
      )
      .option("--sheet <name>", "the sheet of a workbook")
      .option("-o, --output <errors.json>", "write the measurement errors of the site")
      .addHelpText("after", () => `${HELP}\n${helpCautions()}`)
      // `study` takes -o and --sheet too, and keeps those of its sub-commands for them.
      .action((path: string, _: unknown, own: Command) => judgeReadings(path, own.optsWithGlobals()))
  );
}

async function judgeReadings(path: string, options: AgreementOptions): Promise<void> {
  const { readings: first = [], second = [], as, output, sheet } = options;
  if (first.length + second.length < 2) throw wrongUsage("--readings: name two columns or more.");
  if (output !== undefined && (as === undefined || as === "class" || second.length > 0))
    throw wrongUsage("-o: say what is read, --as arm-mm or --as length-cm, by one method.");
  const rows = await readReadings(path, { columns: [...first, ...second], sheet });
  if (as === "class") {
    say(kappaLines(rows.cells, options));
    return;
  }
  const { readings, leftOut } = numbersOf(rows);
  const left =
    leftOut.length === 0
      ? ""
      : `; left out, a reading missing or no number: row ${leftOut.slice(0, 10).join(", ")}${leftOut.length > 10 ? ` and ${formatNumber(leftOut.length - 10)} more` : ""}`;
  say([`${formatNumber(readings.length)} children${left}.`, ""]);
  if (second.length > 0) {
    const pairs = readings.map((own) => ({
      first: own.slice(0, first.length),
      second: own.slice(first.length),
    }));
    say(computed(() => methodLines(pairs, options.true)));
    return;
  }
  say(computed(() => readerLines(readings, as)));
  if (output === undefined || as === undefined) return;
  const people = options.people === "one" ? "onePerson" : "twoPeople";
  const { errors } = computed(() =>
    measurementErrorsFromReadings(
      as === "arm-mm" ? { armMm: readings } : { lengthCm: [{ posture: options.posture, people, readings }] },
    ),
  );
  await writeFiles(dirname(output), [
    { name: basename(output), content: `${JSON.stringify(errors, undefined, 2)}\n` },
  ]);
  const [own, usual] =
    as === "arm-mm"
      ? [errors.armSdMm, defaultMeasurementErrors.armSdMm]
      : [
          errors.lengthSdCm[options.posture][people],
          defaultMeasurementErrors.lengthSdCm[options.posture][people],
        ];
  process.stderr.write(
    `Written to ${output}: ${round(own)} in place of ${round(usual)}. Scatter only: what all readers do wrong together does not show.\nNext: steelyard calibrate rows.csv --errors ${output} -o site.json\n`,
  );
}

function readerLines(
  readings: readonly (readonly number[])[],
  as: AgreementOptions["as"],
): readonly string[] {
  const unit = as === "arm-mm" ? " mm" : as === "length-cm" ? " cm" : "";
  const { tem, relativePercent, reliability } = technicalError(readings);
  const icc = intraclassCorrelations(readings);
  return [
    line(`Technical error${unit === "" ? "" : `,${unit}`}`, tem),
    line("% of the mean", { value: relativePercent }),
    line("Reliability", { value: reliability }),
    line("ICC (1,1) one-way, single", icc.oneWay.single),
    line("ICC (1,k) one-way, mean", icc.oneWay.mean),
    line("ICC (2,1) any readers, single", icc.twoWayRandom.single),
    line("ICC (2,k) any readers, mean", icc.twoWayRandom.mean),
    line("ICC (3,1) these readers, single", icc.twoWayFixed.single),
    line("ICC (3,k) these readers, mean", icc.twoWayFixed.mean),
  ];
}

function methodLines(
  pairs: readonly { readonly first: readonly number[]; readonly second: readonly number[] }[],
  trueValue: "constant" | "varying",
): readonly string[] {
  const { bias, sd, lower, upper, withinSd } = repeatedLimits(pairs, trueValue);
  return [
    line("Bias, first minus second", bias),
    line("SD of a single difference", sd),
    line("Lower limit of agreement", lower),
    line("Upper limit of agreement", upper),
    ...("pairs" in withinSd
      ? [line("SD of differences within a child", { value: withinSd.pairs })]
      : [
          line("SD within a child, first", { value: withinSd.first }),
          line("SD within a child, second", { value: withinSd.second }),
        ]),
  ];
}

function kappaLines(
  cells: readonly (readonly string[])[],
  { readings = [], second = [], classes }: AgreementOptions,
): readonly string[] {
  if (readings.length !== 2 || second.length > 0)
    throw wrongUsage("--as class: name two columns with --readings.");
  const given = cells.filter((row) => row.every((cell) => cell !== ""));
  const order =
    classes ?? [...new Set(given.flat())].sort((a, b) => Number(a) - Number(b) || (a < b ? -1 : 1));
  const strange = given.flat().find((cell) => !order.includes(cell));
  if (strange !== undefined) throw wrongUsage(`--classes: "${strange}" is in the file and not among them.`);
  const counts = order.map((a) =>
    order.map((b) => given.filter(([one, two]) => one === a && two === b).length),
  );
  return computed(() => [
    `${formatNumber(given.length)} children, ${formatNumber(cells.length - given.length)} left out for a missing class; classes in order: ${order.join(", ")}.`,
    "",
    ...(["none", "linear", "quadratic"] as const).map((weighting) => {
      const { kappa, low, high } = weightedKappa(counts, weighting);
      return line(weighting === "none" ? "Kappa" : `Kappa, ${weighting} weights`, {
        value: kappa,
        low,
        high,
      });
    }),
  ]);
}

/** Readings that a figure cannot be computed from end the command with the reason. */
function computed<T>(compute: () => T): T {
  try {
    return compute();
  } catch (error) {
    if (error instanceof RangeError) throw new CommandFailure(EXIT.notServed, `${error.message}.`);
    throw error;
  }
}

function line(
  name: string,
  own: { readonly value: number; readonly low?: number; readonly high?: number },
): string {
  const interval =
    own.low === undefined || own.high === undefined ? "" : `  (${round(own.low)} to ${round(own.high)})`;
  return `${name.padEnd(34)}${round(own.value).padStart(9)}${interval}`;
}

function round(value: number): string {
  return formatNumber(Math.round(value * 1000) / 1000);
}

function say(lines: readonly string[]): void {
  process.stdout.write(`${lines.join("\n")}\n`);
}

function wrongUsage(message: string): CommandFailure {
  return new CommandFailure(EXIT.wrongUsage, message);
}
