import type { Measurements } from "@steelyard/core/body";
import type { EntryField } from "@steelyard/core/entry";
import { formatNumber } from "@steelyard/core/units";
import { describeField } from "@steelyard/core/wording";

/** What was measured of a child, a few words each, as a child sheet prints them: "length 136 cm". In English, as the papers are. */
export function measuredWords({ earlier, ...others }: Measurements): readonly string[] {
  const words = Object.entries(others).flatMap(([field, value]) => {
    if (value === undefined || value === false) return [];
    const name = describeField(field as EntryField);
    return [value === true ? name : `${name} ${withUnit(field, value)}`];
  });
  return earlier === undefined
    ? words
    : [
        ...words,
        `earlier weight ${formatNumber(earlier.kg)}\u00a0kg at ${withUnit("ageMonths", earlier.ageMonths)}`,
      ];
}

function withUnit(field: string, value: string | number): string {
  if (typeof value === "string") return value;
  if (field === "ageMonths") return `${formatNumber(value)}\u00a0months`;
  const unit = /(Cm|Mm|Kg)$/.exec(field)?.[1]?.toLowerCase();
  return unit === undefined ? formatNumber(value) : `${formatNumber(value)}\u00a0${unit}`;
}
