import { formatNumber, formatQuantity, formatWeight, writtenKg } from "@steelyard/core/units";
import type { CaseEvent, CaseMeasurements } from "./case-event.ts";
import type { CaseRecord } from "./fold-case.ts";
import type { CaseTextMessages } from "./messages/case-text-messages.ts";
import { ENGLISH_CASE_TEXT } from "./messages/english-case-text.ts";

/**
 * A case as plain text, in the order of its events, what was taken back marked as such; times from its start. A dose names its formulary
 * where that is another one than at the foot.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { caseText, foldCase } from "@steelyard/records/case";
 *
 * const versions = { software: "0.1.0", model: "m", formulary: "f", formularySigned: false };
 * const id = "00000000-0000-4000-8000-000000000001";
 * const head = { format: 1, id, caseId: id, at: "2026-11-25T03:12:00.000Z", versions } as const;
 * const text = caseText(foldCase([{ ...head, type: "case-started", code: "K47-2TP" }]));
 * assert.match(text, /^Case K47-2TP\n/);
 * ```
 */
export function caseText(record: CaseRecord, messages: CaseTextMessages = ENGLISH_CASE_TEXT): string {
  const lines = record.history.map(({ event, counts }) => {
    const parts = [
      sinceStart(event.at, record.startedAt),
      counts ? undefined : messages.taken,
      `${event.replaces === undefined ? "" : messages.corrected}${describeEvent(event, messages)}`,
      event.by === undefined ? undefined : messages.by(event.by),
      event.type === "dose-given" && event.versions.formulary !== record.versions.formulary
        ? messages.byFormulary(event.versions)
        : undefined,
    ];
    return parts.filter((part) => part !== undefined).join("  ");
  });
  return `${[
    messages.title(record.code),
    messages.started(record.startedAt),
    "",
    ...lines,
    "",
    messages.versions(record.versions),
    messages.caution,
  ].join("\n")}\n`;
}

/**
 * One event in words, without its time.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { describeEvent, type CaseEvent } from "@steelyard/records/case";
 *
 * const versions = { software: "0.1.0", model: "m", formulary: "f", formularySigned: false };
 * const id = "00000000-0000-4000-8000-000000000001";
 * const note: CaseEvent = { format: 1, id, caseId: id, at: "2026-11-25T03:12:00.000Z", versions, type: "note", text: "asystole" };
 * assert.equal(describeEvent(note), "asystole");
 * ```
 */
export function describeEvent(event: CaseEvent, messages: CaseTextMessages = ENGLISH_CASE_TEXT): string {
  switch (event.type) {
    case "case-started":
      return messages.begun;
    case "measurement":
      return messages.measured(describeMeasurements(event.measurements, messages));
    case "estimate": {
      const { totalKg, low95Kg, high95Kg, idealKg } = event.estimate;
      return messages.estimated({
        total: tenths(totalKg, messages),
        low: tenths(low95Kg, messages),
        high: tenths(high95Kg, messages),
        ...(idealKg !== undefined && { ideal: tenths(idealKg, messages) }),
      });
    }
    case "dose-given": {
      const { medicine, use, route, dose, volume } = event.given;
      const drawn =
        volume === undefined
          ? ""
          : ` (${formatQuantity({ amount: volume.ml, unit: "mL" }, messages.numbers)} ${messages.of} ${volume.strength})`;
      return `${medicine}, ${use}: ${formatQuantity(dose, messages.numbers)}${drawn}, ${route}`;
    }
    case "later-weight":
      return messages.later({ kg: formatWeight(event.kg, messages.numbers), on: event.on });
    case "note":
      return event.text;
    case "second-reading": {
      const { lengthCm, armMm } = event;
      return messages.second(
        describeMeasurements(
          { ...(lengthCm !== undefined && { lengthCm }), ...(armMm !== undefined && { armMm }) },
          messages,
        ),
      );
    }
    case "closed":
      return messages.stopped;
    case "deleted":
      return messages.deleted;
    case "undo":
      return messages.undone;
  }
}

function describeMeasurements(measurements: CaseMeasurements, messages: CaseTextMessages): string {
  return Object.entries(measurements)
    .map(([name, value]) => `${messages.measurements[name] ?? name} ${written(name, value, messages)}`)
    .join(", ");
}

function written(name: string, value: unknown, messages: CaseTextMessages): string {
  const { yes, no, numbers, values, months } = messages;
  if (typeof value === "boolean") return value ? yes : no;
  if (typeof value === "number") {
    const unit = /(Cm|Mm|Kg)$/.exec(name)?.[1]?.toLowerCase();
    const number = formatNumber(value, numbers);
    return unit === undefined ? number : `${number}\u00a0${unit}`;
  }
  if (typeof value === "object" && value !== null) {
    const { kg, ageMonths } = value as { readonly kg: number; readonly ageMonths: number };
    return `${formatWeight(kg, numbers)} (${months(formatNumber(ageMonths, numbers))})`;
  }
  return values[String(value)] ?? String(value);
}

function tenths(kg: number, { numbers }: CaseTextMessages): string {
  return formatWeight(writtenKg(kg), numbers);
}

/**
 * Hours, minutes and seconds from `startedAt` to `at`, both UTC as in events; with a minus for what another device's
 * clock puts before the start.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { sinceStart } from "@steelyard/records/case";
 *
 * assert.equal(sinceStart("2026-11-25T03:15:10.000Z", "2026-11-25T03:12:00.000Z"), "0:03:10");
 * ```
 */
export function sinceStart(at: string, startedAt: string): string {
  const seconds = Math.round((Date.parse(at) - Date.parse(startedAt)) / 1000);
  const rest = Math.abs(seconds);
  const two = (part: number): string => `${part}`.padStart(2, "0");
  return `${seconds < 0 ? "−" : ""}${Math.floor(rest / 3600)}:${two(Math.floor(rest / 60) % 60)}:${two(rest % 60)}`;
}
