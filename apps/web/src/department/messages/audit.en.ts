const plural = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;

/** The audit log. */
export const auditEn = {
  intro:
    "Who read, changed, signed, published and exported what. Entries are chained: each holds the fingerprint of the one before, so that none can be changed or taken out unseen.",
  action: "Action",
  actionHint: "such as case.read",
  actor: "Who",
  actorHint: "an entry’s “who”, such as person:… or command",
  verifyTitle: "Is the log whole?",
  verify: "Check the whole log",
  whole: (count: number): string =>
    `Whole: ${plural(count, "entry", "entries")}, each in its place and unchanged.`,
  broken: "Not whole. Keep this page, stop using the records, and find out why.",
  hash: (hash: string): string =>
    `Fingerprint of the last entry: ${hash}. Kept elsewhere, it shows later that nothing was rewritten.`,
  fault: {
    gap: "entries are missing",
    "broken-chain": "the chain breaks",
    "changed-entry": "an entry was changed",
    "wrong-end": "the end of the log is not where it should be",
    "changed-events": "events of cases were changed",
    "missing-events": "events of cases are missing",
  },
  at: (place: number): string => `at entry ${place}`,
  list: "Entries, the latest first",
  none: "No entry is found.",
  place: "No.",
  subject: "On",
  older: "Older entries",
  newer: "Newer entries",
  exportCsv: "Save as CSV",
  exporting: "Reading the log.",
  exported: (file: string, n: number): string => `${file} holds ${plural(n, "entry", "entries")}.`,
  exportCut: (n: number): string => `Only the latest ${n} are in the file. Filter to reach earlier ones.`,
};
