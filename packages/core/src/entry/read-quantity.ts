import { err, ok, type Result } from "../result.ts";
import { withoutDrift } from "../units/without-drift.ts";
import type { QuantityField } from "./entry-field.ts";
import type { EntryIssue, EntryNotice, UnitProposal } from "./entry-issue.ts";
import { HUMAN_LIMITS } from "./human-limits.ts";
import { plainNumber } from "./plain-number.ts";
import { proposeUnits } from "./propose-units.ts";
import { type DecimalMark, readDecimal } from "./read-decimal.ts";
import { type ScannedPart, scanQuantity } from "./scan-quantity.ts";
import {
  acceptedUnits,
  FIELD_UNIT,
  findUnit,
  isAge,
  toFieldUnit,
  type UnitSymbol,
  unitRatio,
} from "./unit-table.ts";

export interface ReadOptions {
  /** The decimal mark of the source, where it is known (a file); a person may use either. */
  readonly decimalMark?: DecimalMark;
  /** The unit of an age without one is known, e.g. from the name of its column. */
  readonly ageUnitKnown?: boolean;
}

interface ReadQuantity {
  readonly value: number;
  readonly notices: readonly EntryNotice[];
}

interface PartInUnit {
  readonly value: number;
  readonly unit: UnitSymbol;
}

const NO_NOTICES: readonly EntryNotice[] = [];

/** A number in the unit of the field, from what a person typed. */
export function readQuantity(
  field: QuantityField,
  text: string,
  options: ReadOptions,
): Result<ReadQuantity, EntryIssue> {
  const { low, high } = HUMAN_LIMITS[field];
  const plain = plainNumber(text);
  const unitKnown = !isAge(field) || options.ageUnitKnown === true;
  if (unitKnown && plain >= low && plain <= high) return ok({ value: plain, notices: NO_NOTICES });

  const trimmed = text.trim();
  if (trimmed === "") return err({ type: "empty", field });
  const scan = scanQuantity(trimmed);
  if (scan.type === "several") return err({ type: "several-numbers", field, text: trimmed });
  if (scan.type === "unreadable") return err({ type: "not-a-number", field, text: trimmed });

  const [first, ...rest] = scan.parts;
  if (first === undefined) return err({ type: "not-a-number", field, text: trimmed });
  return rest.length === 0
    ? readSingle({ field, text: trimmed, part: first, unitKnown, ...options })
    : readCompound({ field, text: trimmed, parts: scan.parts, ...options });
}

/** "136", "13,5", "1.36 m". */
function readSingle({
  field,
  text,
  part,
  unitKnown,
  decimalMark,
}: {
  field: QuantityField;
  text: string;
  part: ScannedPart;
  unitKnown: boolean;
  decimalMark?: DecimalMark;
}): Result<ReadQuantity, EntryIssue> {
  const unit = part.unit === "" ? FIELD_UNIT[field] : findUnit(field, part.unit);
  if (unit === undefined) {
    return err({ type: "unit-unknown", field, text, unit: part.unit, accepted: acceptedUnits(field) });
  }
  const decimal = readDecimal(part.number, decimalMark);
  if (decimal.type === "unreadable") return err({ type: "not-a-number", field, text });
  if (decimal.type === "ambiguous") {
    const proposals = decimal.readings.flatMap((typed) =>
      part.unit === ""
        ? proposeUnits({ field, typed })
        : proposeUnits({ field, typed }).filter(({ from }) => from === unit),
    );
    return err({ type: "ambiguous-separator", field, text, proposals });
  }
  if (part.unit === "" && !unitKnown && decimal.value > 0) {
    return err({
      type: "unit-missing",
      field,
      text,
      proposals: proposeUnits({ field, typed: decimal.value }),
    });
  }
  const value = toFieldUnit({ field, value: decimal.value, from: unit });
  const proposals = part.unit === "" ? proposeUnits({ field, typed: decimal.value, except: unit }) : [];
  return checkLimits({ field, text, value, proposals, converted: unit !== FIELD_UNIT[field] });
}

/** "9 y 3 m", "5 ft 4 in", "12 lb 4 oz": units falling in size, whole numbers but for the last. */
function readCompound({
  field,
  text,
  parts,
  decimalMark,
}: {
  field: QuantityField;
  text: string;
  parts: readonly ScannedPart[];
  decimalMark?: DecimalMark;
}): Result<ReadQuantity, EntryIssue> {
  const several: EntryIssue = { type: "several-numbers", field, text };
  let total = 0;
  let larger: PartInUnit | undefined;
  for (const part of parts) {
    if (part.unit === "") return err(several);
    const unit = findUnit(field, part.unit);
    if (unit === undefined) {
      return err({ type: "unit-unknown", field, text, unit: part.unit, accepted: acceptedUnits(field) });
    }
    const decimal = readDecimal(part.number, decimalMark);
    if (decimal.type !== "number" || !/^[\d.,]+$/.test(part.number)) return err(several);
    const fits =
      larger === undefined ||
      (Number.isInteger(larger.value) && decimal.value < unitRatio({ large: larger.unit, small: unit }));
    if (!fits) return err(several);
    larger = { value: decimal.value, unit };
    total += toFieldUnit({ field, ...larger, from: unit });
  }
  return checkLimits({ field, text, value: withoutDrift(total), proposals: [], converted: true });
}

function checkLimits({
  field,
  text,
  value,
  proposals,
  converted,
}: {
  field: QuantityField;
  text: string;
  value: number;
  proposals: readonly UnitProposal[];
  converted: boolean;
}): Result<ReadQuantity, EntryIssue> {
  const { low, high } = HUMAN_LIMITS[field];
  if (!Number.isFinite(value)) return err({ type: "not-a-number", field, text });
  if (value < 0 || (value === 0 && low > 0)) return err({ type: "not-positive", field, value });
  if (value < low || value > high) return err({ type: "out-of-limits", field, value, low, high, proposals });
  // An age is said in years as often as in months: taking it so is no conversion worth a notice.
  const notices =
    converted && !isAge(field) ? [{ type: "unit-converted", field, text, value } as const] : NO_NOTICES;
  return ok({ value: value + 0, notices });
}
