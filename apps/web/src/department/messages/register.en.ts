import type { CaseSummary } from "@steelyard/records/department";

const plural = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;

/** The cases of the department and one of them. */
export const registerEn = {
  intro:
    "What the devices of this department have sent. Cases go by a code and hold no names. Every list and every case that you open stands in the audit log.",
  state: "Clock",
  states: { all: "running or stopped", open: "running", closed: "stopped" },
  due: "Scale weight",
  dues: { all: "with or without", weight: "still to be weighed" },
  code: "Case code",
  none: "No case is found. Change the filters, or wait until a device has had the network.",
  running: "clock running",
  estimated: (kg: string, low: string, high: string): string => `${kg} estimated, ${low} to ${high}`,
  notEstimated: "no estimate",
  doses: (n: number): string => plural(n, "dose", "doses"),
  weighed: (kg: string, on: string): string => `weighed ${kg} on ${on}`,
  off: (percent: string): string => `estimate ${percent} off`,
  weightDue: "to be weighed",
  older: "Older cases",
  newer: "Newer cases",
  all: "All cases",
  ran: ({ model, formulary, calibration }: CaseSummary["versions"]): string =>
    `Body model ${model}, formulary ${formulary}, ${calibration === undefined ? "no calibration" : `calibration ${calibration}`}.`,
  started: (when: string): string => `started ${when}`,
  timeline: "Timeline",
  unsent: (n: number): string =>
    plural(n, "entry is not on the server yet.", "entries are not on the server yet."),
  sendAgain: "Send again",
  sent: "On the server.",
  exportIntro:
    "One row for each case with a measurement, as a study reads it: no names, no codes, days instead of dates. The export stands in the audit log.",
  makeExport: "Make the file",
  made: (file: string, rows: number): string => `${file} holds ${plural(rows, "case", "cases")}.`,
  saveFile: "Save the file",
  fewRows: (rows: number, limit: number): string =>
    `Only ${plural(rows, "case", "cases")}: with fewer than ${limit} a child may be known by being among them. Take a longer period, or agree first on who sees the file.`,
  earlier: "There are earlier cases that the file does not hold: ask for them by days.",
  study: "Open it on the Study screen of Bedside, or with “steelyard study”.",
};
