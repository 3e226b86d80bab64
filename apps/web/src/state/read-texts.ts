import { combineReadings, type EntryTexts, type RepeatedField, readEntry } from "@steelyard/core/entry";
import { describeEntryIssue } from "@steelyard/core/wording";
import { messages as words } from "../messages/index.ts";
import { language } from "../messages/language.ts";
import { ageAt, monthsBetween } from "./age-of-date.ts";
import { type BedsideField, type BedsideState, bedsideFields, type RepeatField } from "./bedside-state.ts";
import type { FieldMessage } from "./field-message.ts";
import { sumOfParts } from "./sum-of-parts.ts";

/** Texts that the entry of the library understands. */
export type EntryTextsRead = EntryTexts;

type Texts = BedsideState["texts"];
type Given = Pick<BedsideState, "texts" | "typing"> & Partial<Pick<BedsideState, "today">>;
interface Read {
  readonly texts: EntryTextsRead;
  readonly messages: readonly FieldMessage[];
}

/** Fields of this screen alone: they end in one of the library's, or change no weight. */
const ownFields = new Set<BedsideField>([
  "lengthCm2",
  "lengthCm3",
  "armMm2",
  "armMm3",
  "birthDate",
  "earlierDate",
  "burnPercent",
]);
const shared = bedsideFields.filter((field) => !ownFields.has(field));

/**
 * What was typed on this screen in the words of the library's entry: two parts of a length as their sum, two or three
 * readings as one, days in the calendar as ages.
 */
export function readTexts(given: Given): Read {
  const { texts } = given;
  const length = readings(given, "lengthCm");
  const arm = readings(given, "armMm");
  const ages = readDates(given);
  return {
    texts: {
      ...Object.fromEntries(shared.map((field) => [field, texts[field]])),
      ...length.texts,
      ...arm.texts,
      ...ages.texts,
    },
    messages: [...length.messages, ...arm.messages, ...ages.messages],
  };
}

/** The readings of one measurement as one. A doubtful first reading stands alone, as its doubt comes first. */
function readings({ texts, typing }: Given, field: RepeatedField): Read {
  const messages: FieldMessage[] = [];
  const first = textOf(texts, field);
  if (first !== texts[field].trim()) {
    messages.push(notice(field, words.sumOfParts({ parts: texts[field].trim(), sum: first })));
  }
  const numbers: number[] = [];
  for (const place of [field, `${field}2`, `${field}3`] as const) {
    const text = textOf(texts, place);
    const entry = readEntry(field, text);
    if (entry.ok) numbers.push(entry.value.value);
    else if (place === field && text !== "") return { texts: { [field]: first }, messages };
    else if (text !== "" && place !== typing) messages.push(doubtOf(place as RepeatField, entry.error));
  }
  if (numbers.length < 2) {
    const [only] = numbers;
    return { texts: { [field]: first === "" && only !== undefined ? String(only) : first }, messages };
  }
  const combined = combineReadings({ field, readings: numbers });
  const isTyping = typing?.startsWith(field) === true;
  if (!isTyping) {
    const isThirdNeeded = combined.needsThird;
    messages.push({
      ...notice(`${field}${numbers.length as 2 | 3}`, words.readings({ field, numbers, ...combined })),
      kind: isThirdNeeded ? "issue" : "notice",
    });
  }
  const count = field === "lengthCm" ? "lengthReadings" : "armReadings";
  return { texts: { [field]: String(combined.value), [count]: String(combined.readings) }, messages };
}

function textOf(texts: Texts, place: RepeatedField | RepeatField): string {
  const text = texts[place].trim();
  return place.startsWith("lengthCm") ? (sumOfParts(text) ?? text) : text;
}

function doubtOf(field: RepeatField, issue: Parameters<typeof describeEntryIssue>[0]): FieldMessage {
  const proposals = "proposals" in issue ? issue.proposals : [];
  const sentence = describeEntryIssue(
    "proposals" in issue ? { ...issue, proposals: [] } : issue,
    language?.messages,
  );
  return { field, kind: "issue", sentence, proposals };
}

/** Ages from days in the calendar, where no age was typed. */
function readDates({ texts, typing, today }: Given): Read {
  const messages: FieldMessage[] = [];
  const found: { ageMonths?: string; earlierAgeMonths?: string } = {};
  const { birthDate, earlierDate } = texts;
  if (today === undefined) return { texts: found, messages };
  const doubt = (field: BedsideField, sentence: string): void => {
    if (field !== typing) messages.push({ field, kind: "issue", sentence, proposals: [] });
  };
  const ofBirth = ageAt({ birthDate, day: today });
  if (birthDate !== "" && ofBirth === undefined) doubt("birthDate", words.notABirthDate);
  if (ofBirth !== undefined) {
    if (texts.ageMonths.trim() === "") {
      found.ageMonths = `${ofBirth} mo`;
      messages.push(notice("birthDate", words.ageOfBirthDate(ofBirth)));
    } else messages.push(notice("birthDate", words.ageBeforeBirthDate));
  }
  if (earlierDate === "" || texts.earlierAgeMonths.trim() !== "") return { texts: found, messages };
  const now = readEntry("ageMonths", found.ageMonths ?? texts.ageMonths);
  const since = monthsBetween({ from: earlierDate, to: today });
  const then = now.ok && since !== undefined ? Math.round((now.value.value - since) * 100) / 100 : undefined;
  if (since === undefined) doubt("earlierDate", words.notAnEarlierDate);
  else if (then === undefined) messages.push(notice("earlierDate", words.earlierNeedsAge));
  else if (then < 0) doubt("earlierDate", words.earlierBeforeBirth);
  else found.earlierAgeMonths = `${then} mo`;
  return { texts: found, messages };
}

function notice(field: BedsideField, sentence: string): FieldMessage {
  return { field, kind: "notice", sentence, proposals: [] };
}
