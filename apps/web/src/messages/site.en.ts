import type { SiteEvidence, SiteIdentity } from "@steelyard/core/body";
import { formatNumber } from "@steelyard/core/units";
import type { Signer } from "../state/site-rules.ts";

const one = (value: number): string => formatNumber(Math.round(value * 10) / 10);

/** The words of the screen of the site. */
export const siteEn = {
  intro:
    "A calibration fits the weights to the children of your place. It is learnt from children who were measured and then weighed, by “steelyard calibrate” or on the Study screen. Once taken here, every weight, dose and case on this device uses it from the next child on, until it is taken off.",
  calibration: "Calibration",
  hint: "the file of the site profile; nothing leaves this device",
  none: "None: weights are those of a site that has not been calibrated, with a wider range.",
  takeOff: (name: string): string => `Take off ${name}`,
  notJson: (file: string): string => `${file} is not a site profile: it cannot be read as JSON.`,
  kept: (name: string): string => `Weights on this device now use the calibration to ${name}.`,
  keptNext: (name: string): string =>
    `The calibration to ${name} is used from the next child on: the case on the screen goes on as it began.`,
  notKept: "The browser refuses to keep it: it ends when this page is closed.",
  takenOff: "Taken off. Weights are those of a site without a calibration.",
  takenOffNext: "Taken off. From the next child on, weights are those of a site without a calibration.",
  unsigned:
    "Nobody has signed this calibration. A licensed professional of the site has to review it before it is used on patients.",
  facts: {
    site: "Site",
    made: "Made",
    children: "From",
    meanError: "Mean error (estimate minus scale)",
    within10: "Within 10 % of the scale",
    coverage: "Inside the 95 % range",
    rows: "Fingerprint of the rows",
    model: "Body model",
  },
  made: ({ createdOn, signed }: SiteIdentity): string => `${createdOn}, ${signed ? "signed" : "not signed"}`,
  children: ({ children, dates }: SiteEvidence): string =>
    `${formatNumber(children)} ${children === 1 ? "child" : "children"}${dates === undefined ? "" : `, weighed from ${dates.from} to ${dates.to}`}`,
  calibrationTitle: "Calibration",
  calibrationWaits: (name: string | undefined): string =>
    name === undefined
      ? "From the next child on: none."
      : `From the next child on: the calibration to ${name}.`,
  formulary: {
    title: "Formulary",
    intro:
      "Doses come from the draft that is part of this page, until your site takes its own here: a file that “steelyard formulary sign” has signed, or an unsigned one, which stays a draft and says so. From the next child on, every dose, total and case event of this device follows it, without a network too.",
    file: "Formulary file",
    hint: "the file of the formulary; nothing leaves this device",
    draft: (version: string): string =>
      `In use: the draft that comes with the page, ${version}. Nobody has signed it.`,
    checking: "Checking the file.",
    kept: (version: string): string => `Doses on this device now follow ${version}.`,
    keptNext: (version: string): string =>
      `Kept. ${version} is used from the next child on: the case on the screen goes on as it began.`,
    notKept: "The browser refuses to keep it: it ends when this page is closed.",
    takeOff: (version: string): string => `Take off ${version}`,
    leaveLost: "Use the draft that comes with the page",
    takenOff: "Taken off. Doses follow the draft that comes with the page.",
    takenOffNext: "Taken off. From the next child on, doses follow the draft that comes with the page.",
    draftWaits: "From the next child on: the draft that comes with the page.",
    waits: (version: string): string => `From the next child on: ${version}.`,
    refused: (file: string): string => `${file} is not taken, and nothing is changed.`,
    tooLarge: (mb: number): string => `It is larger than ${mb} MB; no formulary is.`,
    faults: (count: number): string =>
      count === 1 ? "It has a fault:" : `It has ${formatNumber(count)} faults, among them:`,
    signedByNobody: "It calls itself signed, and does not say by whom.",
    changedSince: (names: string): string =>
      `It was edited after ${names} signed it: have it reviewed and signed again.`,
    facts: {
      version: "Version",
      title: "Title",
      signed: "Signed",
      fingerprint: "Fingerprint",
      from: "Comes from",
      holds: "Holds",
    },
    signedBy: (signers: readonly Signer[]): string =>
      signers.length === 0
        ? "not signed"
        : signers.map(({ name, role, date }) => `${name}, ${role}, on ${date}`).join("; "),
    fromFile: "a file taken on this device",
    fromDepartment: "the department’s server",
    holds: (uses: number, medicines: number): string =>
      `${formatNumber(uses)} uses of ${formatNumber(medicines)} medicines, fluids and energies`,
    unsigned:
      "Nobody has signed this formulary. A licensed pharmacist or physician of the site has to review and sign it before it is used on patients.",
    oneSigner: (count: number): string =>
      `One person has signed it, and it has ${formatNumber(count)} high-alert ${count === 1 ? "medicine" : "medicines"}: these need a second pair of eyes.`,
    old: "It was signed more than a year ago: have it reviewed again.",
    differs: (count: number): string =>
      count === 0
        ? "Nothing in it differs from the draft that comes with the page."
        : count === 1
          ? "1 difference from the draft that comes with the page"
          : `${formatNumber(count)} differences from the draft that comes with the page`,
    differsNow: "Compare with the draft",
    moreDifferences: (count: number): string =>
      `and ${formatNumber(count)} more: “steelyard formulary diff” lists them all.`,
  },
  department: {
    title: "Department",
    intro:
      "Where the department runs a server, this device can send it its cases and show those of the other devices. Weights and doses never need it, and cases are kept here first. Whoever runs the server enrols the device and gets a token for it, once: “steelyard device add”.",
    page: "The page of the department: cases, formulary, people",
    token: "Token of this device",
    link: "Link this device",
    noToken: "That is no token: it has 32 letters, digits, - and _ or more, and no spaces.",
    unlink: "Unlink this device",
    unlinkKeep: "Unlink, and keep what the department handed out",
    unlinkDrop: "Unlink, and use it no longer from the next child on",
    holds: {
      formulary: "The formulary comes from the department.",
      calibration: "The calibration comes from the department.",
    },
    refusedDocument: {
      formulary: "The formulary that the department hands out is not used:",
      calibration: "The calibration that the department hands out is not used:",
    },
    notVerified: {
      "changed-on-the-way": "it is not what was sent. It is asked for again when the page is next opened.",
      faulty: "it has faults, or is of another version of Steelyard.",
      "not-signed": "nobody has signed it.",
      "edited-since-signed": "it was edited after it was signed.",
    },
    asking: "Asking the server.",
    reached: "The server answers.",
    waiting: (count: number): string =>
      count === 0
        ? "Every event of this device is on it."
        : count === 1
          ? "1 event waits."
          : `${count} events wait.`,
    refused: (count: number): string =>
      count === 1
        ? "1 event was not taken and stays on this device:"
        : `${count} events were not taken and stay on this device:`,
    reasons: {
      faulty: "it holds something that the server cannot read",
      "id-taken": "the server has another event under the same number",
      "case-purged": "the department has deleted that case by its policy",
    },
    trouble: {
      unreachable: "The server does not answer; it is asked again by itself.",
      "no-server": "There is no department server under this address.",
      "not-enrolled":
        "The server does not know this token, or not any more. Unlink, and ask for another one.",
      "update-needed": "The server is of another version: load the page again while the network is on.",
    },
  },
  change: (before: number, after: number): string =>
    `${one(before)}\u00a0% before, ${one(after)}\u00a0% after`,
};
