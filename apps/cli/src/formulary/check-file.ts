import type { Formulary } from "@steelyard/core/dosing";
import {
  reviewFormulary,
  signaturesNeeded,
  verifySignOff,
  writeFormulary,
} from "@steelyard/formulary/ownership";
import { CommandFailure, EXIT } from "../exit-status.ts";
import { wrap } from "../wrap.ts";
import { type LoadedFormulary, loadFormulary } from "./load-formulary.ts";
import { sha256 } from "./sha256.ts";

/** `steelyard formulary check [file]`: faults end it with 1; what a reviewer should look at is listed and does not. */
export async function checkFile(path: string, { step }: { readonly step: string }): Promise<void> {
  const percent = Number(step);
  if (step.trim() === "" || !(percent >= 0 && percent <= 1000)) {
    throw new CommandFailure(EXIT.wrongUsage, `--step: "${step}" is not a percentage from 0 to 1000.`);
  }
  const loaded = await loadFormulary(path);
  const { name, formulary } = loaded;
  const remarks = reviewFormulary(formulary, { stepShare: percent / 100 });
  const lines = [
    `${name}: ${describeSize(formulary)}. No fault.`,
    await describeSignOff(loaded),
    remarks.length === 0
      ? `No dose steps by more than ${percent} % from one band to the next.`
      : `To look at (doses that step by more than ${percent} % from one band to the next):`,
    ...remarks.map(({ place, message }) => `* ${place}: ${message}`),
  ];
  process.stdout.write(`${lines.map((line) => wrap(line, { hanging: "  " })).join("\n")}\n`);
}

function describeSize({ title, version, medicines }: Formulary): string {
  const uses = medicines.reduce((sum, medicine) => sum + medicine.uses.length, 0);
  return `${title}, version ${version}, ${medicines.length} medicines, ${uses} uses`;
}

/** Whether it is signed, by whom, and whether that still holds for the file as it stands. */
export async function describeSignOff({
  formulary,
  file,
}: Pick<LoadedFormulary, "formulary" | "file">): Promise<string> {
  // Of the file as it stands: what validation tidies (a space at the end of a text) is an edit all the same.
  const verified = await verifySignOff({ formulary: file?.value ?? formulary, sha256 });
  if (!verified.ok) {
    return verified.error.type === "not-signed"
      ? "Not signed: a draft, not to be used on a patient."
      : `NOT SIGNED: edited after ${verified.error.signOff.name} signed it on ${verified.error.signOff.date}.`;
  }
  const { name, role, date, second, fingerprint } = verified.value;
  if (file !== undefined && file.text !== writeFormulary(file.value)) {
    return `NOT SIGNED: the file is not laid out as it was when ${name} signed it on ${date}.`;
  }
  const other = second === undefined ? "" : `; and by ${second.name}, ${second.role}, on ${second.date}`;
  const { signatures, because } = signaturesNeeded({ formulary });
  const lacks =
    second !== undefined || signatures < 2
      ? ""
      : ` One signature only: a second reviewer must sign for its ${because.length} high-alert medicines.`;
  return `Signed by ${name}, ${role}, on ${date}${other}. Fingerprint ${fingerprint}.${lacks}`;
}
