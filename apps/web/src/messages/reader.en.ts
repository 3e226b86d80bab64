import { formatNumber } from "@steelyard/core/units";

const units = { lengthCm: "cm", armMm: "mm" } as const;
type Field = keyof typeof units;

export const readerEn = {
  intro: "The other person measures anew, without seeing the first values.",
  nothingYet: "Measure length and arm on Bedside first.",
  toBedside: "To Bedside",
  here: "On this device",
  hereHow: "Hand the device over. The first values stay hidden until the second are in.",
  handOver: "Hand over",
  elsewhere: "On another device",
  elsewhereHow:
    "The other device opens this page by the code, with or without a network. Its answer comes back as a code.",
  askCode: "Code for the other device",
  answerCode: "Code from the other device",
  answerHint: "eight signs",
  scan: "Scan with the camera",
  scanning: "Point the camera at the code on the other device.",
  stopScanning: "Stop",
  noCamera: "The camera cannot be used. Type the code.",
  mistyped: "That is no code of an answer. Please check every sign.",
  otherAsking: "That code answers another asking, perhaps for another child. Ask anew.",
  compare: "Compare",
  blindTitle: "For the second reader",
  blindIntro: "Lay the tape anew and type what you read. Ask nobody what the first reading was.",
  done: "Done",
  cancel: "Cancel",
  amSecond: "Reading for another device",
  askHint: "three signs, from the first device",
  go: "Go on",
  noAsk: "That is no code of an asking. Please check every sign.",
  showCode: "Make the code",
  answerTitle: "Show or read out this code to the first reader",
  again: "Change the values",
  agreement: "Agreement",
  what: "What",
  first: "First",
  second: "Second",
  apart: "Apart",
  names: { lengthCm: "Length", armMm: "Arm", weight: "Weight" },
  value: (field: Field, value: number): string => `${formatNumber(value)}\u00a0${units[field]}`,
  inMm: (mm: number): string => `${formatNumber(mm)}\u00a0mm`,
  percent: (percent: number): string => `${formatNumber(percent)}\u00a0%`,
  within: (field: Field, limit: number): string =>
    `${readerNames[field]}: within the ${formatNumber(limit)}\u00a0${units[field]} that careful readings differ by.`,
  beyond: (field: Field, limit: number): string =>
    `${readerNames[field]}: further apart than the ${formatNumber(limit)}\u00a0${units[field]} that careful readings differ by. Read a third time.`,
  limitSource:
    "The limit is 2.77 technical errors of measurement, as two standardisation tests give them within an observer (lengths 0.63 cm, arms 3.15 mm); 19 of 20 pairs lie within it.",
  takeIn: "Take both readings in",
  takeInThird: "Take both in and read a third time",
  discard: "Discard the second",
} as const;

const readerNames: Record<Field, string> = { lengthCm: "Length", armMm: "Arm" };
