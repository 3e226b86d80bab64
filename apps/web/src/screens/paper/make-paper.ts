import { defaultBodyModel, type EstimatedChild } from "@steelyard/core/body";
import { type ChildReport, computeChild } from "@steelyard/core/child";
import { err, ok, type Result } from "@steelyard/core/result";
import { formatNumber } from "@steelyard/core/units";
import { describeBodyIssue } from "@steelyard/core/wording";
import { draftFormulary } from "@steelyard/formulary";
import {
  type BookletProgress,
  checkDrawing,
  createImprint,
  type Drawing,
  drawArmBand,
  drawBookletInSteps,
  drawChildSheet,
  drawGuide,
  drawLabels,
  drawReadingTest,
  drawStrip,
  drawWeightGrid,
  ENGLISH_PAPER,
  type ImprintIssue,
  labelSheetOf,
  pageSizes,
  type SheetContext,
  type StripMedium,
  type Typefaces,
} from "@steelyard/paper";
import { language } from "../../messages/language.ts";
import { paperMessages } from "../../messages/paper.ts";
import { versions } from "../../state/versions.ts";
import { holdsDoses, type PaperChoices } from "./paper-choices.ts";

export interface PaperTools {
  readonly typefaces: Typefaces;
  readonly sha256: (text: string) => Promise<string>;
  /** YYYY-MM-DD. */
  readonly today: string;
  /** The child on Bedside, for its sheet and its labels, and what was measured in words. */
  readonly child: EstimatedChild | undefined;
  readonly measured: readonly string[];
  /** Told how far a booklet is. */
  readonly onProgress: (progress: BookletProgress) => void;
  /** Lets the screen live between two steps; false when nobody waits for the paper any more. */
  readonly pause: () => Promise<boolean>;
}

/** The widest roll that large-format printers take, mm (44 in; common practice). */
const widestRollMm = 1118;

/** The drawing of what was chosen, or why there is none, one sentence a line; undefined when nobody waits for it any more. */
export async function makePaper(
  choices: PaperChoices,
  tools: PaperTools,
): Promise<Result<Drawing, readonly string[]> | undefined> {
  const { typefaces, sha256, today } = tools;
  const medium = mediumOf(choices);
  if (!medium.ok) return err([medium.error]);
  const { kind, page, problems, site } = choices;
  if (holdsDoses(kind) && problems.length === 0) return err([paperMessages.noProblem]);
  const isOfChild = kind === "child" || kind === "labels";
  if (isOfChild && tools.child === undefined) return err([paperMessages.noChild]);
  // Doses are never printed without saying which formulary they are from.
  const formulary = choices.formulary?.value ?? (holdsDoses(kind) ? draftFormulary : undefined);
  const chosen = {
    medium: medium.value,
    ...(holdsDoses(kind) ? { page, problems } : {}),
    ...(isOfChild ? { measurements: tools.child?.measurements } : {}),
  };
  const imprint = await createImprint({
    paper: kind,
    choices: chosen,
    softwareVersion: versions.software,
    modelVersion: defaultBodyModel().version,
    site: site?.value,
    formulary,
    madeOn: today,
    expiresOn: yearAfter(today),
    sha256,
  });
  if (!imprint.ok) return err([imprintSentence(imprint.error)]);
  const context = { typefaces, messages: ENGLISH_PAPER, imprint: imprint.value };
  const drawing = await drawChosen({ choices, context, medium: medium.value, tools });
  if (drawing === undefined || !drawing.ok) return drawing;
  const { pages } = drawing.value;
  for (const own of pages) {
    const faults = checkDrawing({ ...drawing.value, pages: [own] }, typefaces);
    if (faults.length > 0) return err([paperMessages.cannotDraw, ...faults.slice(0, 3).map(faultSentence)]);
    if (pages.length > 20 && !(await tools.pause())) return undefined;
  }
  return drawing;
}

function faultSentence(fault: ReturnType<typeof checkDrawing>[number]): string {
  if (fault.type === "glyphs-missing") return paperMessages.glyphsMissing(fault.characters, fault.text);
  return paperMessages.doesNotFit(fault.type === "texts-overlap" ? fault.texts[0] : fault.text);
}

interface Chosen {
  readonly choices: PaperChoices;
  readonly context: SheetContext;
  readonly medium: StripMedium;
  readonly tools: PaperTools;
}

async function drawChosen(given: Chosen): Promise<Result<Drawing, readonly string[]> | undefined> {
  const { choices, context, medium, tools } = given;
  const { problems, page } = choices;
  const site = choices.site?.value;
  const size = "sheet" in medium ? medium.sheet : pageSizes.a4;
  switch (choices.kind) {
    case "strip": {
      const drawing = drawStrip({ ...context, medium, site });
      if (drawing.ok) return drawing;
      const { widthMm, leastMm } = drawing.error;
      return err([
        paperMessages.tooNarrow(
          formatNumber(widthMm, language?.numbers),
          formatNumber(leastMm, language?.numbers),
        ),
      ]);
    }
    case "arm-band":
      return ok(drawArmBand({ ...context, size }));
    case "grid":
      return ok(drawWeightGrid({ ...context, size, site, girths: "arm" }));
    case "guide":
      return ok(drawGuide({ ...context, size }));
    case "reading-test":
      return ok(drawReadingTest({ ...context, size, site }));
    case "grid-waist":
      return ok(drawWeightGrid({ ...context, size, site, girths: "arm-and-waist" }));
    case "booklet":
      return drawWholeBooklet(given);
    case "child":
    case "labels": {
      const report = reportOf(given);
      if (!report.ok) return report;
      const own = { ...context, report: report.value, problems };
      if (choices.kind === "child") return ok(drawChildSheet({ ...own, size, measured: tools.measured }));
      const sheet = labelSheetOf(page);
      if (!sheet.ok) throw new RangeError(`Cannot draw labels as ${page} is no sheet of labels`);
      return ok(drawLabels({ ...own, sheet: sheet.value }));
    }
  }
}

/** A booklet takes seconds: one weight step, then the screen, then the next. */
async function drawWholeBooklet({
  choices,
  context,
  medium,
  tools,
}: Chosen): Promise<Result<Drawing, never> | undefined> {
  const size = "sheet" in medium ? medium.sheet : pageSizes.a4;
  const formulary = choices.formulary?.value ?? draftFormulary;
  const steps = drawBookletInSteps({ ...context, size, formulary, problems: choices.problems });
  for (;;) {
    const next = steps.next();
    if (next.done) return ok(next.value);
    tools.onProgress(next.value);
    if (!(await tools.pause())) return undefined;
  }
}

/** Everything computed for the child on Bedside, by the calibration and the formulary of the paper. */
function reportOf({ choices, tools }: Chosen): Result<ChildReport, readonly string[]> {
  const site = choices.site?.value;
  const report = computeChild({
    measurements: tools.child?.measurements ?? {},
    formulary: choices.formulary?.value ?? draftFormulary,
    ...(site && { site }),
    versions: { software: versions.software },
  });
  return report.ok ? report : err([describeBodyIssue(report.error, language?.messages)]);
}

function mediumOf({ page, rollWidth }: PaperChoices): Result<StripMedium, string> {
  if (page === "a4" || page === "a3" || page === "letter") return ok({ sheet: pageSizes[page] });
  if (page !== "roll") return ok({ sheet: pageSizes.a4 });
  const rollWidthMm = Number(rollWidth.trim().replace(",", "."));
  if (rollWidth.trim() === "" || !Number.isFinite(rollWidthMm) || rollWidthMm <= 0) {
    return err(paperMessages.rollWidthMissing);
  }
  return rollWidthMm > widestRollMm
    ? err(paperMessages.tooWide(formatNumber(widestRollMm, language?.numbers)))
    : ok({ rollWidthMm });
}

function imprintSentence(issue: ImprintIssue): string {
  return issue.type === "other-model"
    ? paperMessages.otherModel(issue.profileModel, issue.currentModel)
    : paperMessages.changedSinceSigned(issue.name, issue.date);
}

/** A year: sites review their papers yearly (common practice). */
function yearAfter(day: string): string {
  const [year = "", ...rest] = day.split("-");
  return `${Number(year) + 1}-${rest.join("-")}`.replace(/-02-29$/, "-02-28");
}
