import type { Reviewer } from "@steelyard/core/dosing";
import { signFormulary, writeFormulary } from "@steelyard/formulary/ownership";
import { CommandFailure, EXIT } from "../exit-status.ts";
import { describeSignOff } from "./check-file.ts";
import { loadFormulary } from "./load-formulary.ts";
import { sha256 } from "./sha256.ts";
import { writeResult } from "./write-result.ts";

export interface SignOptions {
  readonly name: string;
  readonly role: string;
  readonly date: string;
  readonly secondName?: string;
  readonly secondRole?: string;
  readonly secondDate?: string;
  readonly output: string;
}

/** `steelyard formulary sign file --name .. --role .. --date .. -o signed.json`. */
export async function signFile(path: string, options: SignOptions): Promise<void> {
  const { name, role, date, output } = options;
  const second = secondOf(options);
  const { formulary } = await loadFormulary(path);
  let signed: Awaited<ReturnType<typeof signFormulary>>;
  try {
    signed = await signFormulary({ formulary, name, role, date, ...(second && { second }), sha256 });
  } catch (error) {
    if (!(error instanceof RangeError || error instanceof TypeError)) throw error;
    throw new CommandFailure(EXIT.wrongUsage, `${error.message}.`);
  }
  await writeResult(output, writeFormulary(signed));
  process.stderr.write(
    `${await describeSignOff({ formulary: signed })}\nKeep the fingerprint where the file is not: it shows later that nothing was edited.\n`,
  );
}

/** The other reviewer: named wholly or not at all, and somebody else. */
function secondOf({ name, secondName, secondRole, secondDate }: SignOptions): Reviewer | undefined {
  if ([secondName, secondRole, secondDate].every((given) => given === undefined)) return undefined;
  if (secondName === undefined || secondRole === undefined || secondDate === undefined) {
    throw new CommandFailure(
      EXIT.wrongUsage,
      "A second reviewer needs --second-name, --second-role and --second-date.",
    );
  }
  if (secondName.trim().toLowerCase() === name.trim().toLowerCase()) {
    throw new CommandFailure(
      EXIT.wrongUsage,
      `The second reviewer must be somebody else: current value is ${secondName}.`,
    );
  }
  return { name: secondName, role: secondRole, date: secondDate };
}

/** `steelyard formulary verify file`: 0 where the sign-off holds for every byte of the file, 1 where it does not. */
export async function verifyFile(
  path: string,
  { fingerprint }: { readonly fingerprint?: string },
): Promise<void> {
  const loaded = await loadFormulary(path);
  const sentence = await describeSignOff(loaded);
  const { formulary } = loaded;
  if (!sentence.startsWith("Signed by")) throw new CommandFailure(EXIT.notServed, sentence);
  if (fingerprint !== undefined && formulary.signOff?.fingerprint !== fingerprint.trim().toLowerCase()) {
    throw new CommandFailure(
      EXIT.notServed,
      `The fingerprint is not the one that was kept: it is ${formulary.signOff?.fingerprint ?? "missing"}. This file was signed another time.`,
    );
  }
  process.stdout.write(`${sentence}\n`);
}
