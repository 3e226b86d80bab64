const plural = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;

/** What the versions of a formulary and of a calibration have in common, and the calibration itself. */
export const documentsEn = {
  versions: "Versions",
  noVersions: "No version yet.",
  made: ({ person, time }: { readonly person: string; readonly time: string }): string =>
    `written by ${person}, ${time}`,
  draft: "unsigned draft for a licensed reviewer",
  signed: "signed",
  inForce: "in force",
  publishedBefore: "was in force",
  noneInForce:
    "Nothing is in force: devices use what came with the software, an unsigned draft for a licensed reviewer.",
  inForceNow: (label: string): string => `In force: ${label}.`,
  open: "Open",
  missing: "There is no such version.",
  unreadable: "This version cannot be read by this page. Load the page again; it may be of another version.",
  all: "All versions",
  signing: "Signatures",
  needs: (n: number, total: number): string => `${n} of ${plural(total, "signature", "signatures")} needed.`,
  fourEyes: (medicines: string): string =>
    `Two reviewers have to sign, neither of them its writer, because it holds high-alert medicines: ${medicines}.`,
  twoEyes: "One reviewer has to sign.",
  signature: ({
    person,
    registration,
    time,
  }: {
    readonly person: string;
    readonly registration: string;
    readonly time: string;
  }): string => `${person}, ${registration}, ${time}`,
  countsNot: "does not count: written by the signer, or no reviewer any more",
  noSignature: "Nobody has signed.",
  signTitle: "Sign this version",
  notReviewer: "Only a licensed reviewer can sign.",
  ownWork: "You wrote this version. As it holds high-alert medicines, others have to sign it.",
  hasSigned: "You have signed this version.",
  statement:
    "I am licensed to answer for this. I have read this version whole, compared it with the sources and the rules of this place, and it may be used here.",
  statementMissing: "Without this statement it is no signature.",
  registration: "Licence or registration",
  registrationHint: "register and number, as they stand under the signature",
  password: "Your password once more",
  sign: "Sign",
  publishTitle: "Put in force",
  publishIntro:
    "What is in force goes to every linked device the next time it has the network. Each device says which version it computes by.",
  publish: "Publish",
  publishAsk: (label: string, before: string): string =>
    `${label} comes into force for every device. ${before}`,
  replaces: (label: string): string => `It takes the place of ${label}.`,
  replacesNone: "Until now devices use what came with the software.",
  publishYes: "Publish it",
  rollBack: "Roll back to this version",
  rollBackAsk: (label: string, before: string): string =>
    `${label} was in force before and comes back for every device. ${before} Both stay in the list of what was in force.`,
  rollBackYes: "Roll back",
  cannotPublish: "It lacks signatures and cannot be put in force.",
  mayNotPublish: "A reviewer or an administrator puts versions in force.",
  isInForce: "This version is in force.",
  history: "What was in force",
  publication: ({
    label,
    person,
    time,
  }: {
    readonly label: string;
    readonly person: string;
    readonly time: string;
  }): string => `${label}, from ${time}, by ${person}`,
  saveFile: "Save as a file",
  calibrationIntro:
    "A calibration fits the weights to the children of this place. It is learnt from cases that were weighed later, judged on children it has not seen, signed by a reviewer and then put in force.",
  fitTitle: "Fit from cases",
  calibrationName: "Name of the site",
  calibrationNameHint: "as it stands on every output",
  fit: "Fit",
  fitted: (rows: number): string => `Fitted to ${plural(rows, "child", "children")}. It is not kept yet.`,
  leftOut: (reason: string, rows: number): string => `${plural(rows, "case", "cases")} left out: ${reason}`,
  moreCases: "There are earlier cases; only the latest were taken.",
  tooFewToJudge:
    "There are too few children to judge it on others that it has not seen. Do not publish it on this.",
  accuracy: "On children that the calibration had not seen",
  measure: "Measure",
  before: "Before",
  after: "After",
  meanError: "Mean error, estimate minus scale",
  rmspe: "Root mean square error",
  within10: "Within 10 % of the scale",
  within20: "Within 20 % of the scale",
  coverage: "Inside the 95 % range",
  gain: ({
    value,
    low,
    high,
  }: {
    readonly value: string;
    readonly low: string;
    readonly high: string;
  }): string => `Within 10 %: change ${value}, 95 % interval ${low} to ${high}.`,
  noGain: "The interval holds no gain: this calibration may not help. A reviewer has to weigh that.",
  shift: (percent: string): string => `The shift itself is known to about ${percent}.`,
  forOnePercent: (n: number): string => `To know it to 1\u00a0%, ${n} children would be needed.`,
  store: "Keep it as a draft to be signed",
  stored: "It is kept. A reviewer can sign it now.",
  looks: "To look at before signing:",
};
