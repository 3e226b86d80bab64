/** Days in a month, as in the WHO growth standards: a twelfth of 365.25. */
const daysPerMonth = 30.4375;
const msPerDay = 86_400_000;
/** Nobody over 21 is a child here, whatever the calendar was set to. */
const oldestMonths = 252;

/** Months from one day to another, both as 2026-11-25; undefined where either is no day or they are the wrong way round. */
export function monthsBetween({
  from,
  to,
}: {
  readonly from: string;
  readonly to: string;
}): number | undefined {
  const days = (Date.parse(to) - Date.parse(from)) / msPerDay;
  return days >= 0 ? days / daysPerMonth : undefined;
}

/** Age on a day, months to 0.01; undefined where that is no age of a child. */
export function ageAt({
  birthDate,
  day,
}: {
  readonly birthDate: string;
  readonly day: string;
}): number | undefined {
  const months = monthsBetween({ from: birthDate, to: day });
  return months === undefined || months > oldestMonths ? undefined : Math.round(months * 100) / 100;
}
