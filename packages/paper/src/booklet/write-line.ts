import type { DoseLine, FurtherDose, SheetLine } from "@steelyard/core/dosing";
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

/** Warnings that say nothing which a page for a weight does not say already. */
const untold: ReadonlySet<string> = new Set(["rounded", "age-needed", "diluted"]);

/** The same dose, volume and rate that the screen shows for this weight, written by the same functions. */
export function writeLine(line: SheetLine, messages: BookletMessages): WrittenLine {
  const head = `${line.medicine}, ${line.use}, ${line.route}`;
  if (line.unavailable !== undefined) {
    return { head, dose: messages.noDose({ because: describeUnavailable(line.unavailable) }), notes: [] };
  }
  const warnings = line.warnings.filter(({ type }) => !untold.has(type) && type !== "limited");
  return {
    head,
    dose: doseText(line, messages),
    basis: messages.basis[line.basis],
    notes: [
      ...dilutionNotes(line, messages),
      ...givingNotes(line, messages),
      ...(line.preparations ?? []).slice(0, 1).map((own) => preparationNote(own, messages)),
      ...line.further.map((next) => messages.further({ dose: withVolume(next, messages) })),
      ...warnings.map((warning) => describeDosingWarning(warning)),
    ],
  };
}

function doseText(line: DoseLine, messages: BookletMessages): string {
  const of = line.of === undefined ? "" : ` ${line.of}`;
  const limited =
    line.limitedBy === undefined
      ? ""
      : ` (${line.limitedBy === "minimum" ? messages.minimum : messages.maximum})`;
  const isRate = line.dose.unit === "mL" && line.dose.per === "h";
  const { rate } = line;
  const rateText =
    rate === undefined || isRate
      ? ""
      : ` = ${messages.rate({ mlPerH: mlPerH(rate.mlPerH), concentration: rate.concentration })}`;
  return `${formatQuantity(line.dose)}${of}${volumeText(line, messages)}${rateText}${limited}`;
}

function withVolume(next: FurtherDose, messages: BookletMessages): string {
  return `${formatQuantity(next.dose)}${volumeText(next, messages)}`;
}

function volumeText(
  { dose, volume }: Pick<FurtherDose, "dose" | "volume">,
  messages: BookletMessages,
): string {
  if (volume === undefined || dose.unit === "mL") return "";
  return ` = ${messages.volume({ ml: ml(volume.ml), strength: volume.strength })}`;
}

function dilutionNotes({ volume, addedTo }: DoseLine, messages: BookletMessages): string[] {
  const notes: string[] = [];
  if (volume?.dilution !== undefined) {
    const { takeMl, strength, addMl, diluent } = volume.dilution;
    notes.push(
      messages.dilute({ take: ml(takeMl), strength, add: ml(addMl), diluent, result: volume.strength }),
    );
  }
  if (addedTo !== undefined) notes.push(messages.addTo({ ml: ml(addedTo.ml), diluent: addedTo.diluent }));
  return notes;
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
