import type { StoredSiteProfile } from "@steelyard/core/body";
import type { Formulary, ProblemId } from "@steelyard/core/dosing";

export const paperKinds = [
  "strip",
  "arm-band",
  "grid",
  "grid-waist",
  "booklet",
  "child",
  "labels",
  "guide",
  "reading-test",
] as const;
export type PaperKind = (typeof paperKinds)[number];
const sheetPages = ["a4", "a3", "letter"] as const;
/** Sheets of labels by the size of a label: the ids of `labelSheets`. */
export const labelPages = ["70x37", "63.5x38.1", "2.625x1in"] as const;
const paperPages = [...sheetPages, "roll", ...labelPages] as const;
export type PaperPage = (typeof paperPages)[number];

/** Languages that papers are printed in. */
export const paperLanguages = ["en", "fr"] as const;
export type PaperLanguage = (typeof paperLanguages)[number];

/** A file of the site that was read and found good. */
export interface Taken<T> {
  readonly file: string;
  readonly value: T;
}

/** Everything chosen on the Paper screen. */
export interface PaperChoices {
  readonly kind: PaperKind;
  readonly page: PaperPage;
  readonly language: PaperLanguage;
  /** As typed. */
  readonly rollWidth: string;
  /** What a booklet, child sheet or labels are for, in the order of the formulary. */
  readonly problems: readonly ProblemId[];
  /** On labels: the class colours of ISO 26825 beside the words. */
  readonly classColours: boolean;
  readonly site?: Taken<StoredSiteProfile>;
  readonly formulary?: Taken<Formulary>;
}

export const firstChoices: PaperChoices = {
  kind: "strip",
  page: "a4",
  language: "en",
  rollWidth: "297",
  problems: ["arrest", "anaphylaxis", "seizure"],
  classColours: false,
};

/** Whether a paper holds doses, and so asks which problems are on it. */
export function holdsDoses(kind: PaperKind): boolean {
  return kind === "booklet" || kind === "child" || kind === "labels";
}

/** Whether a paper is for the child on Bedside. */
export function isOfChild(kind: PaperKind): boolean {
  return kind === "child" || kind === "labels";
}

/** The language of the page where there are papers in it, else English. */
export function languageOf(tag: string | undefined): PaperLanguage {
  return paperLanguages.find((own) => own === tag) ?? "en";
}

/** The sheets that a paper comes on: a roll is for the strip alone, and labels have their own. */
export function pagesOf(kind: PaperKind): readonly PaperPage[] {
  if (kind === "labels") return labelPages;
  return kind === "strip" ? [...sheetPages, "roll"] : sheetPages;
}

/** The choices with another paper; a sheet that it does not come on gives way to its first. */
export function withKind(choices: PaperChoices, kind: PaperKind): PaperChoices {
  const [first = "a4"] = pagesOf(kind);
  const page = pagesOf(kind).includes(choices.page) ? choices.page : first;
  return { ...choices, kind, page };
}

/** The same on the command line, but for the measurements of a child. */
export function commandOf(choices: PaperChoices): string {
  const { kind, page, rollWidth, problems, language, site, formulary } = choices;
  return [
    "steelyard paper",
    kind === "grid-waist" ? "grid --waist" : kind,
    `--page ${page}`,
    ...(page === "roll" ? [`--roll-width-mm ${rollWidth}`] : []),
    ...(holdsDoses(kind) ? problems.map((problem) => `--problem ${problem}`) : []),
    ...(language === "en" ? [] : [`--language ${language}`]),
    ...(site === undefined ? [] : [`--site ${site.file}`]),
    ...(formulary === undefined ? [] : [`--formulary ${formulary.file}`]),
    `-o ${fileNameOf({ kind, page })}`,
  ].join(" ");
}

/** What the file is called: "strip-a4.pdf". */
export function fileNameOf({ kind, page }: Pick<PaperChoices, "kind" | "page">): string {
  return `${kind}-${page}.pdf`;
}
