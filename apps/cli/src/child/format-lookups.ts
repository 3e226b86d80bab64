import type { EquipmentLine, EquipmentSizeLine } from "@steelyard/core/equipment";
import type { SignLine, SignValueLine } from "@steelyard/core/signs";
import { formatNumber } from "@steelyard/core/units";
import {
  type Block,
  describeEquipmentItem,
  describeEquipmentNote,
  describeEquipmentSize,
  describeLookupGap,
  describeLookupRests,
  describeLookupRule,
  describeLookupWarning,
  describeSign,
  describeSignValue,
  equipmentBlock,
  signsBlock,
} from "@steelyard/core/wording";
import { wrap } from "../wrap.ts";

const HEAD = { indent: "  ", hanging: "      " };
const DETAIL = { indent: "      ", hanging: "        " };

type Line = EquipmentLine | SignLine;

/** Sizes of equipment, one item a line with what else is published under it. */
export function formatEquipment(lines: readonly EquipmentLine[]): string {
  return formatBlock(equipmentBlock(), lines, (line) =>
    line.unavailable === undefined ? equipmentTexts(line) : [gapText(describeEquipmentItem(line), line)],
  );
}

/** Normal signs, likewise. */
export function formatSigns(lines: readonly SignLine[]): string {
  return formatBlock(signsBlock(), lines, (line) =>
    line.unavailable === undefined ? signTexts(line) : [gapText(describeSign(line), line)],
  );
}

/** A heading, what holds for many of the lines once, and the lines. */
function formatBlock<L extends Line>(
  { title, lines: intro }: Block,
  lines: readonly L[],
  textsOf: (line: L) => readonly string[],
): string {
  const heightAge = lines.flatMap(({ warnings }) => warnings).find(({ type }) => type === "height-age");
  const shared = heightAge === undefined ? [] : [`! ${describeLookupWarning(heightAge)}`];
  return [
    `== ${title} ==`,
    ...[...intro, ...shared].map((text) => wrap(text, { hanging: "  " })),
    ...lines.map((line) => {
      const [head = "", ...details] = [...textsOf(line), ...warningTexts(line)];
      return [wrap(head, HEAD), ...details.map((text) => wrap(text, DETAIL))].join("\n");
    }),
  ].join("\n");
}

function equipmentTexts(line: EquipmentSizeLine): string[] {
  const size = describeEquipmentSize(line.item, line);
  const ready = (line.ready ?? []).map((value) => describeEquipmentSize(line.item, { ...line, value }));
  const others = line.alternatives.map(
    (choice) => `or ${describeEquipmentSize(line.item, choice)}${on(choice)}`,
  );
  return [
    `${describeEquipmentItem(line)}: ${size}${on(line)}${ready.length > 0 ? `; ${ready.join(" and ")} ready` : ""}`,
    ...distinct(others, size),
    ...line.notes.map((note) => describeEquipmentNote(note)),
  ];
}

function signTexts(line: SignValueLine): string[] {
  const centiles = line.centiles
    ?.map(({ centile, value }) => `${formatNumber(value)}\u00a0(${formatNumber(centile)})`)
    .join(", ");
  const range = centiles === undefined ? "" : ", 10th to 90th centile";
  return [
    `${describeSign(line)}: ${describeSignValue(line)}${range}${on(line)}`,
    ...line.alternatives.map((choice) => `or ${describeSignValue(choice)}${on(choice)}`),
    ...(centiles === undefined ? [] : [`(centile): ${centiles}`]),
  ];
}

/** Other rules that give another size, each size and ground once. */
function distinct(texts: readonly string[], size: string): string[] {
  return [...new Set(texts)].filter((text) => !text.startsWith(`or ${size}`));
}

/** ", by length (length 136 cm ÷ 10 + 5)". */
function on({ rests, working }: Pick<Line, "rests" | "working">): string {
  if (rests.length === 0) return "";
  const rule = describeLookupRule(working);
  return `, by ${describeLookupRests(rests)}${rule === "" ? "" : ` (${rule})`}`;
}

function gapText(name: string, { unavailable }: Extract<Line, { unavailable: object }>): string {
  return `${name}: none. ${describeLookupGap(unavailable)}`;
}

/** The height-age stands above the lines already. */
function warningTexts({ warnings }: Line): string[] {
  return warnings
    .filter(({ type }) => type !== "height-age")
    .map((warning) => `! ${describeLookupWarning(warning)}`);
}
