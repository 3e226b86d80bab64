import type { Measurements } from "@steelyard/core/body";
import type { EntryField } from "@steelyard/core/entry";
import { formatNumber } from "@steelyard/core/units";
import { describeField, type Language } from "@steelyard/core/wording";

/** What was measured of a child, a few words each in the language of the paper, as a child sheet prints them: "length 136 cm". */
export function measuredWords({ earlier, ...others }: Measurements, language: Language): readonly string[] {
  const words = Object.entries(others).flatMap(([field, value]) => {
    if (value === undefined || value === false) return [];
    const name = describeField(field as EntryField, language.messages);
    return [value === true ? name : `${name} ${withUnit(field, value, language)}`];
  });
  if (earlier === undefined) return words;
  const named = (field: EntryField): string => describeField(field, language.messages);
  return [
    ...words,
    `${named("earlierKg")} ${withUnit("earlierKg", earlier.kg, language)}`,
    `${named("earlierAgeMonths")} ${withUnit("ageMonths", earlier.ageMonths, language)}`,
  ];
}

function withUnit(field: string, value: string | number, { numbers, lookup }: Language): string {
  if (typeof value === "string") return value;
  const written = formatNumber(value, numbers);
  if (field === "ageMonths") return `${written}\u00a0${lookup.values.age.month[numbers.plural(value)]}`;
  const unit = /(Cm|Mm|Kg)$/.exec(field)?.[1]?.toLowerCase();
  return unit === undefined ? written : `${written}\u00a0${unit}`;
}
