import type { ColumnRole, MappingChange } from "@steelyard/study/import";
import { STUDY_FIELDS } from "@steelyard/study/import";
import { CommandFailure, EXIT } from "../exit-status.ts";

const UNITS = ["mm", "cm", "m", "in", "ft", "g", "kg", "lb", "d", "w", "mo", "y"] as const;
type Unit = (typeof UNITS)[number];

/** Reads `--map "muac=armMm:mm|cm"`: the column, what it is, its unit and a second one that some of its numbers may be in. */
export function readMap(text: string): MappingChange {
  const at = text.lastIndexOf("=");
  const [what = "", units = ""] = text.slice(at + 1).split(":");
  const role = roleOf(what.trim());
  const [unit, alsoUnit, ...rest] = units === "" ? [] : units.split("|").map(unitOf);
  if (at < 1 || role === undefined || rest.length > 0) throw wrong(text);
  return {
    column: text.slice(0, at).trim(),
    role,
    ...(unit === undefined ? {} : { unit }),
    ...(alsoUnit === undefined ? {} : { alsoUnit }),
  };
}

function roleOf(word: string): ColumnRole | undefined {
  if (word === "estimate" || word === "group" || word === "left") return { type: word };
  const field = STUDY_FIELDS.find((own) => own === word);
  return field === undefined ? undefined : { type: "field", field };
}

function unitOf(text: string): Unit {
  const unit = UNITS.find((own) => own === text.trim());
  if (unit === undefined)
    throw new CommandFailure(EXIT.wrongUsage, `--map: "${text}" is no unit; there are ${UNITS.join(", ")}.`);
  return unit;
}

function wrong(text: string): CommandFailure {
  return new CommandFailure(
    EXIT.wrongUsage,
    `--map "${text}": give it as "column=field:unit", such as "muac=armMm:mm". Fields: ${STUDY_FIELDS.join(", ")}; or estimate, group, left.`,
  );
}
