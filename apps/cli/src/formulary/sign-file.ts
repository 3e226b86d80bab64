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
  readonly output: string;
}

/** `steelyard formulary sign file --name .. --role .. --date .. -o signed.json`. */
export async function signFile(path: string, { name, role, date, output }: SignOptions): Promise<void> {
  const { formulary } = await loadFormulary(path);
  let signed: Awaited<ReturnType<typeof signFormulary>>;
  try {
    signed = await signFormulary({ formulary, name, role, date, sha256 });
  } catch (error) {
    if (!(error instanceof RangeError || error instanceof TypeError)) throw error;
    throw new CommandFailure(EXIT.wrongUsage, `${error.message}.`);
  }
  await writeResult(output, writeFormulary(signed));
  process.stderr.write(
    `${await describeSignOff({ formulary: signed })}\nKeep the fingerprint where the file is not: it shows later that nothing was edited.\n`,
  );
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
