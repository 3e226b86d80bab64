import type { FormularyRefusal } from "../../effects/site-rules/read-formulary.ts";
import { siteMessages } from "../../messages/site.ts";

/** How many faults are shown: whoever mends a formulary has the command, which lists them all. */
const shown = 3;

/** Why a formulary is not taken, in sentences. */
export function describeFormularyRefusal(refusal: FormularyRefusal): readonly string[] {
  const words = siteMessages.formulary;
  switch (refusal.type) {
    case "too-large":
      return [words.tooLarge(refusal.mostMb)];
    case "faulty": {
      const faults = refusal.faults.map(({ place, message }) => `${place}: ${message}`);
      return [words.faults(faults.length), ...faults.slice(0, shown)];
    }
    case "signed-by-nobody":
      return [words.signedByNobody];
    case "changed-since":
      return [words.changedSince(refusal.signers.map(({ name }) => name).join(", "))];
  }
}
