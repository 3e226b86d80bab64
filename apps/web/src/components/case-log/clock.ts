/** A span as a clock shows it: "0:42", "12:05", "1:02:09". */
export function writeClock(seconds: number): string {
  const whole = Math.max(0, Math.floor(seconds));
  const two = (part: number): string => `${part}`.padStart(2, "0");
  const hours = Math.floor(whole / 3600);
  const minutes = Math.floor(whole / 60) % 60;
  return hours > 0 ? `${hours}:${two(minutes)}:${two(whole % 60)}` : `${minutes}:${two(whole % 60)}`;
}

/** The time of day here, "03:12". */
export function writeTimeOfDay(at: string): string {
  const date = new Date(at);
  const two = (part: number): string => `${part}`.padStart(2, "0");
  return `${two(date.getHours())}:${two(date.getMinutes())}`;
}

/** The day here, "2026-11-25". */
export function writeDay(at: string): string {
  const date = new Date(at);
  return new Date(date.getTime() - date.getTimezoneOffset() * 60_000).toISOString().slice(0, 10);
}
