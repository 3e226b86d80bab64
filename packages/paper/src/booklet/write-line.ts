import type { DoseLine, DosingWarning, DrawnVolume, FurtherDose, SheetLine } from "@steelyard/core/dosing";
import { formatNumber, formatQuantity } from "@steelyard/core/units";
import { describeDosingWarning, describeUnavailable } from "@steelyard/core/wording";
import type { BookletMessages } from "../messages/booklet-messages.ts";

/** One line of a sheet in the words of a page. */
export interface WrittenLine {
  /** "Adrenaline, cardiac arrest, IV". */
  readonly head: string;
  /** What is drawn up or set: the line that is read first. */
  readonly dose: string;
  /** The weight it goes by; absent where there is no dose. */
  readonly basis?: string;
  /** Everything else that must be known to give it. */
  readonly notes: readonly string[];
}

/**
 * The same dose, volume and rate that the screen shows, written by the same functions, with every warning: a limit and a rounding
 * within 5 % beside the dose, a dilution as its recipe, all others as whole sentences.
 */
export function writeLine(line: SheetLine, messages: BookletMessages): WrittenLine {
  const head = `${line.medicine}, ${line.use}, ${line.route}`;
  const warned = sentencesOf(line.warnings);
  if (line.unavailable !== undefined) {
    return { head, dose: messages.noDose({ because: describeUnavailable(line.unavailable) }), notes: warned };
  }
  return {
    head,
    dose: `${doseText(line, messages)}${whatWasDone(line, messages)}`,
    basis: messages.basis[line.basis],
    notes: [
      ...dilutionNotes(line.volume, messages),
      ...additionNotes(line, messages),
      ...givingNotes(line, messages),
      ...(line.preparations ?? []).slice(0, 1).map((own) => preparationNote(own, messages)),
      ...warned,
      ...line.further.flatMap((next) => furtherNotes(next, messages)),
    ],
  };
}

/** Warnings that stand beside the dose, or as a recipe, and not in a sentence. */
function isBesideDose(warning: DosingWarning): boolean {
  const { type } = warning;
  return type === "limited" || type === "diluted" || (type === "rounded" && !warning.aboveTolerance);
}

function sentencesOf(warnings: readonly DosingWarning[]): readonly string[] {
  return warnings
    .filter((warning) => !isBesideDose(warning))
    .map((warning) => describeDosingWarning(warning));
}

/** " (maximum, rounded down 1.4 %)": what the limits and the marks of a syringe or pump made of the rule. */
function whatWasDone(
  { limitedBy, warnings }: Pick<FurtherDose, "limitedBy" | "warnings">,
  messages: BookletMessages,
): string {
  const done = limitedBy === undefined ? [] : [limitedBy === "minimum" ? messages.minimum : messages.maximum];
  for (const warning of warnings) {
    if (warning.type !== "rounded" || warning.aboveTolerance) continue;
    const percent = formatNumber(Math.abs(warning.errorPercent));
    done.push(messages.rounded({ percent, isLess: warning.errorPercent < 0 }));
  }
  return done.length === 0 ? "" : ` (${done.join(", ")})`;
}

function furtherNotes(next: FurtherDose, messages: BookletMessages): readonly string[] {
  const dose = `${amountText(next, messages)}${volumeText(next, messages)}${whatWasDone(next, messages)}`;
  return [messages.further({ dose }), ...dilutionNotes(next.volume, messages), ...sentencesOf(next.warnings)];
}

function doseText(line: DoseLine, messages: BookletMessages): string {
  const of = line.of === undefined ? "" : ` ${line.of}`;
  const isRate = line.dose.unit === "mL" && line.dose.per === "h";
  const { rate } = line;
  const rateText =
    rate === undefined || isRate
      ? ""
      : ` = ${messages.rate({ mlPerH: mlPerH(rate.mlPerH), concentration: rate.concentration })}`;
  return `${amountText(line, messages)}${of}${volumeText(line, messages)}${rateText}`;
}

/** "10 puffs of 100 micrograms/puff" where the dose counts them, else the dose itself. */
function amountText({ dose, puffs }: Pick<FurtherDose, "dose" | "puffs">, messages: BookletMessages): string {
  const amount = formatQuantity(dose);
  return puffs === undefined || dose.unit !== "puff"
    ? amount
    : messages.volume({ ml: amount, strength: puffs.strength });
}

function volumeText(
  { dose, volume, puffs }: Pick<FurtherDose, "dose" | "volume" | "puffs">,
  messages: BookletMessages,
): string {
  if (puffs !== undefined && dose.unit !== "puff") {
    const count = formatQuantity({ amount: puffs.puffs, unit: "puff" });
    return ` = ${messages.volume({ ml: count, strength: puffs.strength })}`;
  }
  if (volume === undefined || dose.unit === "mL") return "";
  return ` = ${messages.volume({ ml: ml(volume.ml), strength: volume.strength })}`;
}

function dilutionNotes(volume: DrawnVolume | undefined, messages: BookletMessages): readonly string[] {
  if (volume?.dilution === undefined) return [];
  const { takeMl, strength, addMl, diluent } = volume.dilution;
  return [messages.dilute({ take: ml(takeMl), strength, add: ml(addMl), diluent, result: volume.strength })];
}

function additionNotes({ addedTo }: DoseLine, messages: BookletMessages): readonly string[] {
  return addedTo === undefined ? [] : [messages.addTo({ ml: ml(addedTo.ml), diluent: addedTo.diluent })];
}

function givingNotes({ giving }: DoseLine, messages: BookletMessages): string[] {
  const { shortestMin, leastMl } = giving ?? {};
  return [
    ...(shortestMin === undefined ? [] : [messages.notUnder({ minutes: formatNumber(shortestMin) })]),
    ...(leastMl === undefined ? [] : [messages.atLeast({ ml: ml(leastMl) })]),
  ];
}

function preparationNote(
  own: NonNullable<DoseLine["preparations"]>[number],
  messages: BookletMessages,
): string {
  return messages.syringe({
    amount: formatQuantity(own.amount),
    totalMl: ml(own.totalMl),
    diluent: own.diluent,
    start: mlPerH(own.mlPerH),
    low: formatNumber(own.lowMlPerH),
    high: mlPerH(own.highMlPerH),
    perMl: formatQuantity(own.dosePerMlPerH),
  });
}

function ml(amount: number): string {
  return formatQuantity({ amount, unit: "mL" });
}

function mlPerH(amount: number): string {
  return formatQuantity({ amount, unit: "mL", per: "h" });
}
