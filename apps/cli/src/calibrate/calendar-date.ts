/** Whether a text is a day of the calendar, YYYY-MM-DD. */
export function isCalendarDate(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const time = Date.parse(`${text}T00:00:00Z`);
  // 30 February would be read as a day of March.
  return Number.isFinite(time) && new Date(time).toISOString().startsWith(text);
}

/** Today where the command runs. */
export function today(): string {
  const now = new Date();
  const two = (value: number): string => String(value).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
