import {
  ageWarnings,
  type ChildSize,
  cite,
  type LookupGap,
  type LookupSource,
  type LookupWarning,
} from "../lookup/index.ts";
import type { Centile, Sign, SignGapLine, SignKind, SignValue, SignValueLine } from "./sign-line.ts";

interface Head {
  readonly sign: Sign;
  readonly kind?: SignKind;
}

/** A line for the first of the values, with the others beside it and every mark that follows from them. */
export function signLine(
  head: Head,
  child: ChildSize,
  [first, ...alternatives]: readonly [SignValue, ...SignValue[]],
  { centiles, warnings = [] }: { centiles?: readonly Centile[]; warnings?: readonly LookupWarning[] } = {},
): SignValueLine {
  const usesHeightAge = [first, ...alternatives].some(({ rests }) => rests.includes("height-age"));
  const held = first.working.flatMap((step): LookupWarning[] =>
    step.step === "held" ? [{ type: "held", by: step.by, at: step.at }] : [],
  );
  return {
    ...named(head),
    ...first,
    ...(centiles !== undefined && { centiles }),
    alternatives,
    warnings: [
      ...(usesHeightAge && child.age !== undefined ? ageWarnings(child.age) : []),
      ...held,
      ...warnings,
    ],
  };
}

/** A line without a value. */
export function signGap(head: Head, unavailable: LookupGap, sources: readonly LookupSource[]): SignGapLine {
  return { ...named(head), unavailable, rests: [], working: [], warnings: [], sources: cite(sources) };
}

function named({ sign, kind }: Head): Head & { readonly id: string } {
  return kind === undefined ? { id: sign, sign } : { id: `${sign}.${kind}`, sign, kind };
}
