import type { StoredSiteProfile } from "@steelyard/core/body";
import type { Formulary } from "@steelyard/core/dosing";

export const paperKinds = ["strip", "arm-band", "grid", "grid-waist", "guide", "reading-test"] as const;
export type PaperKind = (typeof paperKinds)[number];
const paperPages = ["a4", "a3", "letter", "roll"] as const;
export type PaperPage = (typeof paperPages)[number];

/** A file of the site that was read and found good. */
export interface Taken<T> {
  readonly file: string;
  readonly value: T;
}

/** Everything chosen on the Paper screen. */
export interface PaperChoices {
  readonly kind: PaperKind;
  readonly page: PaperPage;
  /** As typed. */
  readonly rollWidth: string;
  readonly site?: Taken<StoredSiteProfile>;
  readonly formulary?: Taken<Formulary>;
}

export const firstChoices: PaperChoices = { kind: "strip", page: "a4", rollWidth: "297" };

/** The sheets that a paper comes on: a roll is for the strip alone. */
export function pagesOf(kind: PaperKind): readonly PaperPage[] {
  return kind === "strip" ? paperPages : paperPages.filter((page) => page !== "roll");
}

/** The choices with another paper; a sheet that it does not come on gives way to A4. */
export function withKind(choices: PaperChoices, kind: PaperKind): PaperChoices {
  const page = pagesOf(kind).includes(choices.page) ? choices.page : "a4";
  return { ...choices, kind, page };
}

/** The same on the command line. */
export function commandOf({ kind, page, rollWidth, site, formulary }: PaperChoices): string {
  return [
    "steelyard paper",
    kind === "grid-waist" ? "grid --waist" : kind,
    `--page ${page}`,
    ...(page === "roll" ? [`--roll-width-mm ${rollWidth}`] : []),
    ...(site === undefined ? [] : [`--site ${site.file}`]),
    ...(formulary === undefined ? [] : [`--formulary ${formulary.file}`]),
    `-o ${fileNameOf({ kind, page })}`,
  ].join(" ");
}

/** What the file is called: "strip-a4.pdf". */
export function fileNameOf({ kind, page }: Pick<PaperChoices, "kind" | "page">): string {
  return `${kind}-${page}.pdf`;
}
