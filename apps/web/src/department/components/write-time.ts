import { writeDay, writeTimeOfDay } from "../../components/case-log/clock.ts";

/** A moment by the clock of the reader: "2026-11-25 03:12". */
export function writeTime(at: string): string {
  return `${writeDay(at)} ${writeTimeOfDay(at)}`;
}
