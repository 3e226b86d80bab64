import * as v from "valibot";

/** Longest free text in an event; a log is no place for a report. */
const LONGEST_TEXT = 500;

const uuidPattern = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/;

/** Made by the device without asking anybody, and the same wherever the event goes. */
export const uuid: v.GenericSchema<string> = v.pipe(
  v.string(),
  v.regex(uuidPattern, "must be a UUID in lower case"),
);

/** UTC to the millisecond, in one form only, so that the order of texts is the order of times. */
export const instant: v.GenericSchema<string> = v.pipe(
  v.string(),
  v.regex(
    /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}\.\d{3}Z$/,
    "must be a time in UTC such as 2026-11-25T03:12:00.000Z",
  ),
  v.check(isRealInstant, "must be a day and time that exist"),
);

/** A day in the calendar of the place. */
export const day: v.GenericSchema<string> = v.pipe(
  v.string(),
  v.regex(/^\d{4}-\d{2}-\d{2}$/, "must be a day such as 2026-11-25"),
  v.check((text) => isRealInstant(`${text}T00:00:00.000Z`), "must be a day that exists"),
);

/** `Date` reads the text that it is given and no clock. */
function isRealInstant(text: string): boolean {
  const date = new Date(text);
  return !Number.isNaN(date.getTime()) && date.toISOString() === text;
}

export const text: v.GenericSchema<string> = v.pipe(
  v.string(),
  v.minLength(1, "must not be empty"),
  v.maxLength(LONGEST_TEXT, `must have at most ${LONGEST_TEXT} characters`),
);

export const name: v.GenericSchema<string> = v.pipe(
  v.string(),
  v.minLength(1, "must not be empty"),
  v.maxLength(120, "must have at most 120 characters"),
);

/** `lineId` of a sheet: `adrenaline.arrest`. */
export const lineId: v.GenericSchema<string> = v.pipe(
  v.string(),
  v.regex(/^[a-z0-9-]+(\.[a-z0-9-]+)+$/, "must be the id of a line such as adrenaline.arrest"),
);

/** Wider than any child: what a tape or scale may say, not what is plausible. */
export function between(low: number, high: number): v.GenericSchema<number> {
  return v.pipe(
    v.number(),
    v.finite("must be a finite number"),
    v.minValue(low, `must be at least ${low}`),
    v.maxValue(high, `must be at most ${high}`),
  );
}
export const positiveAmount: v.GenericSchema<number> = v.pipe(
  v.number(),
  v.finite("must be a finite number"),
  v.gtValue(0, "must be more than 0"),
  v.maxValue(1e9, "must be at most 1000000000"),
);
