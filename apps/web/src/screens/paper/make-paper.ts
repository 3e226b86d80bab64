import { defaultBodyModel, type Measurements } from "@steelyard/core/body";
import { type ChildReport, computeChild } from "@steelyard/core/child";
import type { Formulary } from "@steelyard/core/dosing";
import { err, ok, type Result } from "@steelyard/core/result";
import {
  checkDrawing,
  createImprint,
  type Drawing,
  drawArmBand,
  drawBooklet,
  drawChildSheet,
  drawGuide,
  drawLabels,
  drawReadingTest,
  drawStrip,
  drawWeightGrid,
  labelSheetOf,
  type PaperMessages,
  pageSizes,
  type SheetContext,
  type StripMedium,
  type Typefaces,
} from "@steelyard/paper";
import { measuredWords } from "./measured-words.ts";
import { holdsDoses, isOfChild, type PaperChoices } from "./paper-choices.ts";
import type { PaperRefusal } from "./paper-refusal.ts";

export interface PaperTools {
  readonly typefaces: Typefaces;
  readonly messages: PaperMessages;
  readonly sha256: (text: string) => Promise<string>;
  /** YYYY-MM-DD. */
  readonly today: string;
  readonly software: string;
  /** Of the child on Bedside, for its sheet and its labels. */
  readonly measurements: Measurements | undefined;
  /** Told how far a booklet is. */
  readonly onStep: (done: number, of: number) => void;
}

/** The widest roll that large-format printers take, mm (44 in; common practice). */
const widestRollMm = 1118;

/** The drawing of what was chosen, or why there is none. */
export async function makePaper(
  choices: PaperChoices,
  tools: PaperTools,
): Promise<Result<Drawing, PaperRefusal>> {
  const { typefaces, messages, sha256, today, software } = tools;
  const medium = mediumOf(choices);
  if (!medium.ok) return medium;
  const { kind, page, problems, site, language, classColours } = choices;
  if (holdsDoses(kind) && problems.length === 0) return err({ type: "no-problem" });
  if (isOfChild(kind) && tools.measurements === undefined) return err({ type: "no-child" });
  // Doses are never printed without saying which formulary they are from.
  const formulary = choices.formulary?.value ?? (holdsDoses(kind) ? await loadDraft() : undefined);
  const chosen = {
    medium: medium.value,
    language,
    ...(holdsDoses(kind) ? { page, problems } : {}),
    ...(kind === "labels" ? { classColours } : {}),
    ...(isOfChild(kind) ? { measurements: tools.measurements } : {}),
  };
  const imprint = await createImprint({
    paper: kind,
    choices: chosen,
    softwareVersion: software,
    modelVersion: defaultBodyModel().version,
    site: site?.value,
    formulary,
    madeOn: today,
    expiresOn: yearAfter(today),
    sha256,
  });
  if (!imprint.ok) return imprint;
  const context = { typefaces, messages, imprint: imprint.value };
  const drawing = drawChosen({ choices, context, medium: medium.value, formulary, tools });
  if (!drawing.ok) return drawing;
  const faults = checkDrawing(drawing.value, typefaces);
  return faults.length > 0 ? err({ type: "faults", faults }) : drawing;
}

interface Chosen {
  readonly choices: PaperChoices;
  readonly context: SheetContext;
  readonly medium: StripMedium;
  readonly formulary: Formulary | undefined;
  readonly tools: PaperTools;
}

function drawChosen(given: Chosen): Result<Drawing, PaperRefusal> {
  const { choices, context, medium, formulary, tools } = given;
  const { problems, page, classColours } = choices;
  const site = choices.site?.value;
  const size = "sheet" in medium ? medium.sheet : pageSizes.a4;
  switch (choices.kind) {
    case "strip":
      return drawStrip({ ...context, medium, site });
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
      return ok(
        drawBooklet({ ...context, size, formulary: needed(formulary), problems, onStep: tools.onStep }),
      );
    case "child":
    case "labels": {
      const report = reportOf(given);
      if (!report.ok) return report;
      const own = { ...context, report: report.value, problems };
      const measured = measuredWords(tools.measurements ?? {}, context.messages.language);
      if (choices.kind === "child") return ok(drawChildSheet({ ...own, size, measured }));
      const sheet = labelSheetOf(page);
      if (!sheet.ok) throw new RangeError(`Cannot draw labels as ${page} is no sheet of labels`);
      return ok(drawLabels({ ...own, sheet: sheet.value, classColours }));
    }
  }
}

/** Everything computed for the child on Bedside, by the calibration and the formulary of the paper. */
function reportOf({ choices, formulary, tools }: Chosen): Result<ChildReport, PaperRefusal> {
  const site = choices.site?.value;
  const report = computeChild({
    measurements: tools.measurements ?? {},
    formulary: needed(formulary),
    ...(site && { site }),
    versions: { software: tools.software },
  });
  return report.ok ? report : err({ type: "no-estimate", issue: report.error });
}

function needed(formulary: Formulary | undefined): Formulary {
  if (formulary === undefined) throw new TypeError("Cannot draw doses as there must be a formulary");
  return formulary;
}

/** The medicines are fetched when a paper asks for them, and stay on the device like the rest of the page. */
async function loadDraft(): Promise<Formulary> {
  return (await import("@steelyard/formulary")).draftFormulary;
}

function mediumOf({ page, rollWidth }: PaperChoices): Result<StripMedium, PaperRefusal> {
  if (page === "a4" || page === "a3" || page === "letter") return ok({ sheet: pageSizes[page] });
  if (page !== "roll") return ok({ sheet: pageSizes.a4 });
  const rollWidthMm = Number(rollWidth.trim().replace(",", "."));
  if (rollWidth.trim() === "" || !Number.isFinite(rollWidthMm) || rollWidthMm <= 0) {
    return err({ type: "roll-width-missing" });
  }
  return rollWidthMm > widestRollMm ? err({ type: "too-wide", mostMm: widestRollMm }) : ok({ rollWidthMm });
}

/** A year: sites review their papers yearly (common practice). */
function yearAfter(day: string): string {
  const [year = "", ...rest] = day.split("-");
  return `${Number(year) + 1}-${rest.join("-")}`.replace(/-02-29$/, "-02-28");
}
