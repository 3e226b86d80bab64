import type { EquipmentLine } from "@steelyard/core/equipment";
import type { SignLine } from "@steelyard/core/signs";
import { formatNumber } from "@steelyard/core/units";
import {
  describeEquipmentItem,
  describeEquipmentNote,
  describeEquipmentSize,
  describeLookupGap,
  describeLookupRests,
  describeLookupRule,
  describeLookupStep,
  describeLookupWarning,
  describeSign,
  describeSignValue,
} from "@steelyard/core/wording";
import { language } from "../../messages/language.ts";
import { sheetMessages } from "../../messages/sheet.ts";

type Line = EquipmentLine | SignLine;
type Choice = Pick<Line, "rests" | "working">;

/** What a line of equipment or signs shows, in words. */
export interface LookupFace {
  readonly id: string;
  readonly name: string;
  /** The size or value; absent where there is none. */
  readonly value: string | undefined;
  /** What it rests on, and what stands beside it. */
  readonly under: readonly string[];
  /** Whole sentences: the reader must do or decide something. */
  readonly loud: readonly string[];
  readonly working: readonly string[];
  readonly centiles: readonly string[];
  readonly others: readonly string[];
  readonly notes: readonly string[];
  readonly sources: Line["sources"];
}

export function faceOfEquipment(line: EquipmentLine): LookupFace {
  const name = describeEquipmentItem(line, language?.lookup);
  if (line.unavailable !== undefined) return gapFace(line, name);
  const sizeOf = (choice: Parameters<typeof describeEquipmentSize>[1]): string =>
    describeEquipmentSize(line.item, choice, language?.lookup);
  const ready = (line.ready ?? []).map((value) => sizeOf({ ...line, value }));
  const others = line.alternatives.map((choice) => ({ choice, text: sizeOf(choice) }));
  const unlike = new Set(others.map(({ text }) => text).filter((text) => text !== sizeOf(line)));
  return {
    ...commonFace(line, name),
    value: sizeOf(line),
    under: [
      ...by(line),
      ...(ready.length > 0 ? [sheetMessages.lookup.ready(ready.join(sheetMessages.lookup.and))] : []),
      ...(unlike.size > 0 ? [sheetMessages.lookup.or([...unlike].join(sheetMessages.lookup.orJoin))] : []),
    ],
    others: others.map(({ choice, text }) => otherText(choice, text)),
    notes: line.notes.map((note) => describeEquipmentNote(note, language?.lookup)),
  };
}

export function faceOfSign(line: SignLine): LookupFace {
  const name = describeSign(line, language?.lookup);
  if (line.unavailable !== undefined) return gapFace(line, name);
  return {
    ...commonFace(line, name),
    value: describeSignValue(line, language?.lookup),
    under: [...(line.centiles === undefined ? [] : [sheetMessages.lookup.tenthToNinetieth]), ...by(line)],
    centiles: (line.centiles ?? []).map(({ centile, value }) =>
      sheetMessages.lookup.centile(
        formatNumber(centile, language?.numbers),
        formatNumber(value, language?.numbers),
      ),
    ),
    others: line.alternatives.map((choice) => otherText(choice, describeSignValue(choice, language?.lookup))),
  };
}

/** The height-age that several lines used, said once above them. */
export function sharedHeightAge(lines: readonly Line[]): string | undefined {
  const warning = lines.flatMap(({ warnings }) => warnings).find(({ type }) => type === "height-age");
  return warning && describeLookupWarning(warning, language?.lookup);
}

function commonFace(line: Line, name: string): Omit<LookupFace, "value" | "under" | "others"> {
  return {
    id: line.id,
    name,
    loud: line.warnings
      .filter(({ type }) => type !== "height-age")
      .map((warning) => describeLookupWarning(warning, language?.lookup)),
    working: line.working.map((step) => describeLookupStep(step, language?.lookup)),
    centiles: [],
    notes: [],
    sources: line.sources,
  };
}

function gapFace(line: Extract<Line, { unavailable: object }>, name: string): LookupFace {
  const face = commonFace(line, name);
  const loud = [describeLookupGap(line.unavailable, language?.lookup), ...face.loud];
  return { ...face, value: undefined, under: [], others: [], loud };
}

/** "by length"; nothing where it rests on nothing of the child. */
function by({ rests }: Choice): string[] {
  return rests.length === 0 ? [] : [sheetMessages.lookup.by(describeLookupRests(rests, language?.lookup))];
}

/** "5.5 mm, by height-age (age 9.49 years ÷ 4 + 3)" */
function otherText(choice: Choice, value: string): string {
  const rule = describeLookupRule(choice.working, language?.lookup);
  return [value, ...by(choice)].join(", ") + (rule === "" ? "" : ` (${rule})`);
}
