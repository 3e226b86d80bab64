import type { TrackedDoses, TrackedLine, Weights } from "@steelyard/core/dosing";
import { formatNumber, formatQuantity, formatWeight, writtenKg } from "@steelyard/core/units";
import { describeTrackingWarning, draftBanner } from "@steelyard/core/wording";
import type { SheetFormulary } from "../formulary/sheet-formulary.ts";
import { wrap } from "../wrap.ts";
import type { Clock } from "./read-given.ts";

const DETAIL = { indent: "    ", hanging: "      " };
const MINUTES_A_DAY = 24 * 60;

/** What was given of each use, what is left, when the next is due, and what is wrong; for a screen of 80 columns. */
export function formatGiven({
  tracked: { lines, warnings },
  clock,
  weights: { totalKg, cumulative },
  loaded: { formulary, signOff, fingerprint },
}: {
  readonly tracked: TrackedDoses;
  readonly clock: Clock;
  readonly weights: Weights;
  readonly loaded: SheetFormulary;
}): string {
  const { title, lines: banner } = draftBanner();
  const blocks = signOff ? [] : [`*** ${title.toUpperCase()} ***\n${wrap(banner.join(" "))}`];
  for (const line of lines) {
    const own = warnings.filter(({ lineId }) => lineId === line.lineId);
    const texts = [...lineTexts(line, clock), ...own.map((warning) => warningText(warning, clock))];
    blocks.push([`${line.medicine} | ${line.use}`, ...texts.map((text) => wrap(text, DETAIL))].join("\n"));
  }
  const known = new Set(lines.map(({ lineId }) => lineId));
  const rest = warnings.filter(({ lineId }) => !known.has(lineId));
  if (rest.length > 0) {
    blocks.push(rest.map((warning) => wrap(warningText(warning, clock), { hanging: "  " })).join("\n"));
  }
  const by = signOff ? `signed by ${signOff.name}, ${signOff.role}, ${signOff.date}` : "draft, not signed";
  const kg = formatWeight(writtenKg(totalKg, { measured: cumulative === undefined }));
  blocks.push(
    wrap(`For ${kg}, formulary ${formulary.version} (${by}; fingerprint ${fingerprint.slice(0, 16)}).`),
  );
  return `${blocks.join("\n\n")}\n`;
}

function lineTexts(line: TrackedLine, clock: Clock): string[] {
  const { doses, total, totalOfMedicine, maximum, remaining, dosesLeft, nextDue } = line;
  const within = maximum?.withinH === undefined ? "" : ` in ${formatNumber(maximum.withinH)}\u00a0h`;
  const ofMedicine =
    totalOfMedicine.amount === total.amount
      ? ""
      : `; of the medicine${within} ${formatQuantity(totalOfMedicine)}`;
  return [
    `${doses === 1 ? "1 dose" : `${doses} doses`}, ${formatQuantity(total)} in all${ofMedicine}`,
    ...(maximum
      ? [
          `at most ${formatQuantity(maximum.dose)}${within}: ${remaining === undefined || remaining.amount === 0 ? "nothing" : formatQuantity(remaining)} left`,
        ]
      : []),
    ...(dosesLeft === undefined ? [] : [dosesLeft === 0 ? "no dose left" : `${dosesLeft} more at most`]),
    ...(nextDue ? [dueText(nextDue, clock)] : []),
  ];
}

function dueText(
  { earliestMinutes, latestMinutes }: NonNullable<TrackedLine["nextDue"]>,
  clock: Clock,
): string {
  if (latestMinutes === earliestMinutes) return `>> next from ${timeText(earliestMinutes, clock)}`;
  return `>> next from ${timeText(earliestMinutes, clock)} to ${timeText(latestMinutes, clock)}`;
}

function warningText(warning: TrackedDoses["warnings"][number], clock: Clock): string {
  const at = "atMinutes" in warning ? `${timeText(warning.atMinutes, clock)}: ` : "";
  return `! ${at}${describeTrackingWarning(warning)}`;
}

/** As the file writes it; a time of another day says so. */
function timeText(minutes: number, clock: Clock): string {
  if (clock === "minutes") return `minute ${formatNumber(minutes)}`;
  const day = Math.floor(minutes / MINUTES_A_DAY);
  const ofDay = Math.round(minutes - day * MINUTES_A_DAY);
  const two = (value: number): string => String(value).padStart(2, "0");
  const later = day === 0 ? "" : day === 1 ? " the next day" : ` ${day} days later`;
  return `${two(Math.floor(ofDay / 60))}:${two(ofDay % 60)}${later}`;
}
