import type { QuantityField } from "./entry-field.ts";
import type { UnitProposal } from "./entry-issue.ts";
import { HUMAN_LIMITS } from "./human-limits.ts";
import { acceptedUnits, toFieldUnit, type UnitSymbol } from "./unit-table.ts";

/** The units in which a number without one would be a possible measurement of a child, smallest first. */
export function proposeUnits({
  field,
  typed,
  except,
}: {
  field: QuantityField;
  typed: number;
  except?: UnitSymbol;
}): readonly UnitProposal[] {
  const { low, high } = HUMAN_LIMITS[field];
  return acceptedUnits(field)
    .filter((from) => from !== except)
    .map(
      (from): UnitProposal => ({
        type: "unit",
        field,
        typed,
        from,
        value: toFieldUnit({ field, value: typed, from }),
      }),
    )
    .filter(({ value }) => value >= low && value <= high);
}
