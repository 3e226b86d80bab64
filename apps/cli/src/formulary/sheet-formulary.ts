import type { Formulary, SignOff, Use } from "@steelyard/core/dosing";
import { applyOverlay, canonicalJson, verifySignOff, writeFormulary } from "@steelyard/formulary/ownership";
import type { Command } from "commander";
import { CommandFailure, EXIT } from "../exit-status.ts";
import { DRAFT, faultyFile, loadFormulary, loadJson } from "./load-formulary.ts";
import { sha256 } from "./sha256.ts";

export interface SheetFormularyOptions {
  readonly formulary?: string;
  readonly overlay?: readonly string[];
  readonly choose?: readonly string[];
}

/** What the doses are computed from, and who answers for it. */
export interface SheetFormulary {
  readonly formulary: Formulary;
  /** Id of the option that was chosen in place of the default, by id of the line. */
  readonly choices: Readonly<Record<string, string>>;
  readonly signOff?: SignOff;
  /** Of what was signed; where nobody signed, of the canonical text as it stands. */
  readonly fingerprint: string;
  /** What must be known about it beside that. */
  readonly notes: readonly string[];
}

/** Sites review yearly. @source common-practice */
const REVIEW_AFTER_DAYS = 366;

export function withFormularyOptions(command: Command): Command {
  return command
    .option("--formulary <file>", "the formulary of your site in place of the draft that ships")
    .option("--overlay <file...>", "changes of your site to apply to it, in this order")
    .option(
      "--choose <line=dose...>",
      "another published dose in place of the default, as the sheet names it",
    );
}

/** The formulary of the options, checked whole: one that was edited after it was signed is refused. */
export async function loadSheetFormulary({
  formulary: path = DRAFT,
  overlay = [],
  choose = [],
}: SheetFormularyOptions): Promise<SheetFormulary> {
  const { formulary: base, file } = await loadFormulary(path);
  const verified = await verifySignOff({ formulary: file?.value ?? base, sha256 });
  if (!verified.ok && verified.error.type === "changed-since")
    throw changedSince(path, verified.error.signOff);
  if (verified.ok && file !== undefined && file.text !== writeFormulary(file.value)) {
    throw changedSince(path, verified.value);
  }
  let formulary = base;
  for (const change of overlay) {
    const applied = applyOverlay(formulary, (await loadJson(change)).value);
    if (!applied.ok) throw faultyFile(change, applied.error);
    formulary = applied.value;
  }
  const choices = readChoices(formulary, choose);
  const signOff = verified.ok && overlay.length === 0 ? verified.value : undefined;
  return {
    // A file may say that it is signed without a sign-off: nobody answers for it then.
    formulary: formulary.signed && signOff === undefined ? { ...formulary, signed: false } : formulary,
    choices,
    ...(signOff && { signOff }),
    fingerprint: signOff?.fingerprint ?? sha256(canonicalJson(formulary)),
    notes: [
      ...(signOff ? reviewDue(signOff) : []),
      ...(verified.ok && overlay.length > 0
        ? ["The formulary was signed without these changes: with them nobody answers for it."]
        : []),
    ],
  };
}

function changedSince(path: string, { name, date }: SignOff): CommandFailure {
  return new CommandFailure(
    EXIT.notServed,
    `${path} was changed after ${name} signed it on ${date}: have it reviewed and signed again. Nothing was computed.`,
  );
}

function reviewDue({ date }: SignOff): string[] {
  const days = (Date.now() - Date.parse(`${date}T12:00:00Z`)) / 86_400_000;
  if (days <= REVIEW_AFTER_DAYS) return [];
  return [`The formulary was signed on ${date}, more than a year ago: have it reviewed again.`];
}

/** "adrenaline.arrest=by-weight-bands" each; what is not there is answered with what is. */
function readChoices(formulary: Formulary, texts: readonly string[]): Record<string, string> {
  const useById = new Map<string, Use>(
    formulary.medicines.flatMap(({ id, uses }) => uses.map((use) => [`${id}.${use.id}`, use] as const)),
  );
  const choices: Record<string, string> = {};
  for (const text of texts) {
    const [lineId = "", optionId, ...rest] = text.split("=").map((part) => part.trim());
    const use = useById.get(lineId);
    if (optionId === undefined || rest.length > 0) {
      throw wrongChoice(text, "name the line and the dose, as in adrenaline.arrest=by-weight");
    }
    if (use === undefined) throw wrongChoice(text, `the formulary has no line ${lineId}`);
    const known = use.options.map(({ id }) => id);
    if (!known.includes(optionId)) throw wrongChoice(text, `${lineId} has ${known.join(", ")}`);
    if (choices[lineId] !== undefined && choices[lineId] !== optionId) {
      throw wrongChoice(text, `${lineId}=${choices[lineId]} was chosen as well`);
    }
    choices[lineId] = optionId;
  }
  return choices;
}

function wrongChoice(text: string, what: string): CommandFailure {
  return new CommandFailure(EXIT.wrongUsage, `--choose "${text}": ${what}. Nothing was computed.`);
}
