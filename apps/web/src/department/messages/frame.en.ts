import type { PersonRole } from "@steelyard/records/department";
import type { ApiProblem } from "../api/api-problem.ts";
import type { DepartmentScreenId } from "../state/department-screens.ts";

/** What stands around the screens, and what can be said against anything. */
export const frameEn = {
  name: "Department",
  windowTitle: (screen: string): string => `Steelyard Department, ${screen}`,
  menu: "Menu",
  screens: {
    cases: "Cases",
    accuracy: "Accuracy",
    formulary: "Formulary",
    calibration: "Calibration",
    export: "Export for a study",
    people: "People",
    devices: "Devices",
    audit: "Audit",
    account: "Your account",
  } satisfies Record<DepartmentScreenId, string>,
  screenFor: {
    cases: "Cases of every device, later weights",
    accuracy: "Estimate against the scale, over time",
    formulary: "Change, compare, sign, publish",
    calibration: "Fit to the children of this place",
    export: "Rows without names",
    people: "Invite, roles, unlock",
    devices: "Which devices send cases",
    audit: "Who did what, and whether the log is whole",
    account: "Password, passkeys",
  } satisfies Record<DepartmentScreenId, string>,
  roles: {
    clinician: "clinician",
    reviewer: "reviewer",
    researcher: "researcher",
    administrator: "administrator",
  } satisfies Record<PersonRole, string>,
  signedIn: ({
    person,
    roles,
    site,
  }: {
    readonly person: string;
    readonly roles: string;
    readonly site: string;
  }): string => `${person} (${roles}), site ${site}`,
  signOut: "Sign out",
  toBedside: "Bedside, the page for one child, works without an account",
  asking: "Asking the server.",
  loading: "Loading.",
  again: "Ask again",
  no: "Leave it as it is",
  more: (count: number): string => `and ${count} more`,
  notAllowed: "Your roles do not include this screen. An administrator can change them.",
  problems: {
    unreachable: "The server does not answer. Nothing was changed; what you typed is still here.",
    "no-records":
      "This server keeps no records: it serves Bedside alone. Whoever runs it can switch the records on (docs/operations.md).",
    "update-needed": "Page and server are of different versions. Load the page again.",
  } satisfies Record<Exclude<ApiProblem["type"], "refused">, string>,
  /** By the server's word. */
  refusals: {
    "signed-out": "Your session is over. Sign in again; what you typed is still here.",
    "not-allowed": "Your roles do not allow this.",
    "wrong-credentials": "Login and password do not belong together, or the passkey is not known here.",
    "wrong-password": "That is not your password.",
    "wrong-code": "That code is not valid: mistyped, used already, or too old.",
    "set-up-already": "Somebody has set this department up already. Ask an administrator for an invitation.",
    "login-taken": "Somebody has this login already. Choose another one.",
    "weak-password":
      "This password is too easy to guess. Take at least 12 characters; three or four words will do.",
    locked: "Too many wrong passwords: this login is locked for a while. An administrator can unlock it.",
    "last-administrator": "Somebody has to be administrator: this is the last one.",
    "signed-already": "You have signed this version already.",
    "own-work": "This version holds high-alert medicines and you wrote it: others have to sign it.",
    "needs-signatures": "This version lacks signatures and cannot be published yet.",
    "faulty-document": "This was not taken, because of these faults:",
    "too-few-children": "There are too few weighed children in these days to fit a calibration.",
    "incoherent-rows": "The measurements of these children contradict each other too much to fit anything.",
    "unknown-case": "There is no such case here any more: it may have been deleted by policy.",
    "case-purged": "The department has deleted this case by its policy.",
    "id-taken": "The server has another entry under the same number. Load the page again.",
    "sign-in-again": "For this you must have signed in within the last ten minutes. Sign out and in again.",
    "no-passkeys-here":
      "Passkeys need a server with a name of its own: whoever runs it sets publicUrl (docs/operations.md).",
    "faulty-passkey": "The server could not check this passkey. Nothing was added.",
    "known-passkey": "This passkey is there already.",
    "too-many-passkeys": "You have as many passkeys as one person may have. Remove one first.",
    "unknown-passkey": "There is no such passkey here any more.",
    "not-from-the-department": "This can only be changed on the device of the bedside.",
    "unknown-document": "There is no such version here.",
    "unknown-person": "There is no such person here.",
    "unknown-device": "There is no such device here.",
    "wrong-csrf": "This page has lost its proof of the session. Load it again.",
    "foreign-origin": "The page was not loaded from this server. Load it again from there.",
    "too-many": "Too many requests just now. Wait a minute and try again.",
    "too-large": "This is larger than the server takes.",
    "store-full": "The server’s disk is full. Nothing was kept; tell whoever runs it.",
    "store-read-only": "The server’s disk cannot be written to. Nothing was kept; tell whoever runs it.",
    "store-trouble": "The server cannot keep anything just now. Nothing was changed; try again in a while.",
    "server-fault": "The server has made an error. Whoever runs it finds it in the log.",
  },
  lockedUntil: (reason: string): string =>
    `Too many wrong passwords: this login is locked. ${reason} An administrator can unlock it earlier.`,
  refusedBecause: (reason: string): string => `The server has refused this: ${reason}.`,
  unsigned: "Unsigned draft for a licensed reviewer",
  from: "From day",
  to: "To day",
  show: "Show",
  badDay: "A day as 2026-11-25.",
  orderOfDays: "The first day lies after the last.",
};
