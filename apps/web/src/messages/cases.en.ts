import type { Due } from "../state/due.ts";

const plural = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;

/** Words of the clock, the log and the casebook. */
export const casesEn = {
  bar: "Clock and log",
  start: "Start the clock",
  startHint: "keeps a log of this child on this device",
  clock: "Clock",
  openLog: "Log",
  closeLog: "Close the log",
  code: (code: string): string => `Case ${code}`,
  give: (dose: string): string => `Mark ${dose} given`,
  giveStarted: (dose: string): string => `Mark ${dose} started`,
  givenTimes: (n: number): string => `marked ${plural(n, "time", "times")} in this case`,
  marked: (what: string): string => `${what} marked.`,
  undo: "Undo",
  undoWhat: (what: string): string => `Undo: ${what}`,
  bringBack: "Bring back",
  bringBackWhat: (what: string): string => `Bring back: ${what}`,
  takenBack: "taken back",
  correct: "Correct",
  correctWhat: (what: string): string => `Correct: ${what}`,
  correction: "correction",
  due: (due: Due, clock: (seconds: number) => string): string => {
    switch (due.type) {
      case "in":
        return `due in ${clock(due.seconds)}`;
      case "now":
        return "due now";
      case "overdue":
        return `overdue by ${clock(due.seconds)}`;
    }
  },
  dueBetween: (from: string, to: string): string => (from === to ? `at ${from}` : `from ${from} to ${to}`),
  noneDue: "nothing due",
  doses: (n: number, total: string): string => `${plural(n, "dose", "doses")}, ${total} in all`,
  medicineTotal: (total: string): string => `${total} of the medicine for every use`,
  remaining: (left: string, hours: string | undefined): string =>
    `${left} left under the maximum${hours === undefined ? "" : ` in ${hours} h`}`,
  dosesLeft: (n: number): string => (n === 0 ? "no dose left" : `${plural(n, "dose", "doses")} left`),
  byFormulary: (name: string, isSigned: boolean): string =>
    `formulary ${name}${isSigned ? "" : " (draft, not signed)"}`,
  otherFormulary: (n: number, other: string, now: string): string =>
    `${plural(n, "dose was", "doses were")} marked by the ${other}. Maxima, totals and times above go by the one in use, ${now}: check them against what was meant.`,
  notTracked: (what: string): string =>
    `${what}: the formulary in use has no such line. No limit and no next dose is known of it here; it counts in the totals of other uses of the medicine.`,
  givenTitle: "Given and due",
  nothingGiven: "Nothing marked yet. Open a line of the sheet and mark it given, or mark it again here.",
  logTitle: "Log",
  noteLabel: "Note",
  noteHint: "no names; up to 500 characters",
  addNote: "Add the note",
  whoLabel: "By whom",
  whoHint: "initials or a role, if wanted; stands on what is marked from now on",
  timeLabel: "Time given",
  amountLabel: (unit: string): string => `Dose in ${unit}`,
  volumeLabel: "Volume in mL",
  saveCorrection: "Put in place",
  cancel: "Leave as it was",
  badAmount: "The dose must be a number above 0.",
  badVolume: "The volume must be a number above 0.",
  stop: "Stop the clock",
  runOn: "Run on",
  stopped: "Stopped",
  exportTitle: "Export",
  exportText: "Text",
  exportJson: "JSON",
  exportFhir: "FHIR R4",
  exported: (file: string): string =>
    `${file} was made. It holds clinical data: keep it where such files belong.`,
  keptMemory: {
    refused:
      "This browser keeps nothing here: the log lives in this tab only and is lost when it closes. Export it before you leave.",
    full: "The device is full: what was marked last lives in this tab only. Free some space, then try again; export the log before you leave.",
  },
  tryAgain: "Try again",
  locked: "The casebook is locked. What you mark is kept, sealed; earlier entries need the passcode.",
  otherTabs:
    "Steelyard is open in another tab. Both write to the same casebook; each has its own child and clock.",
  unreadable: (n: number): string =>
    `${plural(n, "entry", "entries")} on this device could not be read: damaged, or of a later version. Nothing was changed.`,
  casebook: {
    intro: "Cases kept on this device: no names are asked for, and nothing leaves it unless you export it.",
    empty: "No cases yet. Start the clock on Bedside, or mark a dose given, and the case is kept here.",
    search: "Find a case by code, date, medicine or note",
    none: "No case is found.",
    count: (n: number): string => plural(n, "case", "cases"),
    opening: "Opening the casebook.",
    started: (when: string): string => `started ${when}`,
    running: "clock running",
    estimated: (kg: string, low: string, high: string): string => `${kg} estimated, ${low} to ${high}`,
    doses: (n: number): string => plural(n, "dose", "doses"),
    weighed: (kg: string, on: string): string => `weighed ${kg} on ${on}`,
    off: (percent: string): string => `estimate ${percent} off`,
    notWeighed: "not weighed yet",
    weightDue: (n: number): string => `${plural(n, "case waits", "cases wait")} for a scale weight`,
    filterAll: "All",
    filterDue: "To be weighed",
    filterDeleted: "Deleted",
    filter: "Show",
    laterTitle: "Scale weight, later",
    kg: "Weight, scale",
    on: "Weighed on",
    saveWeight: "Keep the weight",
    badKg: "A weight between 0.2 and 400 kg, as 18.4 or 18,4.",
    badDay: "A day not before the case and not after today.",
    unlikely: (kg: string, low: string, high: string): string =>
      `${kg} lies outside the 95 % range ${low} to ${high}. Is it this child, and are clothes and cannulas off the scale?`,
    keepAnyway: "It was read so; keep it",
    delete: "Delete the case",
    deleted: (code: string): string => `Case ${code} is deleted.`,
    undelete: "Bring the case back",
    purge: "Delete for good",
    purgeSure: "Delete for good: this cannot be undone",
    purged: (code: string): string => `Case ${code} is off this device.`,
    back: "All cases",
    missing: "This case is not on this device, or the casebook is locked.",
    exportAll: "Export",
    exportCsv: "CSV for study",
    exportCsvHint: "one row per case, days instead of dates, no names",
    exportJsonAll: "All cases, JSON",
    importTitle: "Import",
    importLabel: "File of cases, JSON or CSV",
    importHint: "as exported here; every fault is named",
    imported: (events: number, cases: number): string =>
      `${plural(events, "entry", "entries")} of ${plural(cases, "case", "cases")} taken in. Those known already changed nothing.`,
    importedNone: "Nothing was taken in.",
    refusedTitle: (n: number): string => plural(n, "fault", "faults"),
    lockTitle: "Passcode",
    lockWords:
      "A passcode seals what is kept: whoever picks up this device or copies its storage cannot read the cases without it. Marking goes on without it. It does not help against a short passcode, somebody watching, or a device that is taken over while unlocked. There is no way back without it: a forgotten passcode means cases that nobody can read.",
    passcode: "Passcode",
    passcodeAgain: "Passcode once more",
    passcodeHint: "8 characters or more; three or four words are best",
    setPasscode: "Set the passcode",
    tooShort: "Take 8 characters or more.",
    different: "The two are not the same.",
    unlock: "Unlock",
    unlocking: "Working.",
    wrong: "This is not the passcode.",
    lockNow: "Lock now",
    removePasscode: "Take the passcode off",
    lockOpen: "The casebook is unlocked in this tab until it closes.",
  },
  importFaults: {
    empty: "The file is empty.",
    "not-json": (reason: string): string => `The file is damaged or no JSON: ${reason}`,
    "not-a-case-file": "This is not a file of cases.",
    "later-version": "The file was made by a later version of Steelyard. Update this device first.",
    "no-rows": "The file has no cases.",
    "missing-column": (column: string): string => `The column ${column} is missing.`,
    "unknown-column": (column: string): string => `Nothing was read from the column ${column}.`,
    "not-a-number": (row: number, column: string, text: string): string =>
      `Row ${row}, ${column}: “${text}” is not a number with a point for decimals.`,
    "unequal-fields": (row: number, fields: number, expected: number): string =>
      `Row ${row} has ${fields} fields where the head has ${expected}.`,
    "open-quote": (row: number): string => `Row ${row} has a quotation mark that does not close.`,
    "faulty-value": (row: number, column: string, reason: string): string =>
      `Row ${row}, ${column}: ${reason}.`,
    event: (place: number, what: string): string => `Entry ${place}: ${what}.`,
    "not-an-object": "is no entry",
    "unknown-format": "is of a later format",
    "unknown-event": (event: string): string => `is of the unknown kind “${event}”`,
    "faulty-part": (path: string, reason: string): string => `${path} ${reason}`,
    more: (n: number): string => `and ${n} more`,
  },
};
