/** Days in a month, as in the WHO growth standards: a twelfth of 365.25. */
const daysPerMonth = 30.4375;
const msPerDay = 86_400_000;
/** Nobody over 21 is a child here, whatever the calendar was set to. */
const oldestMonths = 252;

/**
 * Months from one day to another, both as 2026-11-25: whole months of the calendar, so that a ninth birthday is 108, and the days over
 * them. Undefined where either is no day or they are the wrong way round.
 */
export function monthsBetween({
  from,
  to,
}: {
  readonly from: string;
  readonly to: string;
}): number | undefined {
  const start = new Date(from);
  const end = new Date(to);
  if (!(start.getTime() <= end.getTime())) return undefined;
  const isEarlierDay = end.getUTCDate() < start.getUTCDate();
  const years = end.getUTCFullYear() - start.getUTCFullYear();
  const whole = years * 12 + end.getUTCMonth() - start.getUTCMonth() - (isEarlierDay ? 1 : 0);
  const reached = new Date(start);
  reached.setUTCMonth(start.getUTCMonth() + whole);
  const days = Math.max(0, (end.getTime() - reached.getTime()) / msPerDay);
  return whole + Math.min(days / daysPerMonth, 0.99);
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
