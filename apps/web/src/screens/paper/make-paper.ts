import { defaultBodyModel } from "@steelyard/core/body";
import { err, ok, type Result } from "@steelyard/core/result";
import { formatNumber } from "@steelyard/core/units";
import {
  checkDrawing,
  createImprint,
  type Drawing,
  drawArmBand,
  drawGuide,
  drawReadingTest,
  drawStrip,
  drawWeightGrid,
  ENGLISH_PAPER,
  type ImprintIssue,
  pageSizes,
  type SheetContext,
  type StripMedium,
  type Typefaces,
} from "@steelyard/paper";
import { language } from "../../messages/language.ts";
import { paperMessages } from "../../messages/paper.ts";
import { versions } from "../../state/versions.ts";
import type { PaperChoices } from "./paper-choices.ts";

export interface PaperTools {
  readonly typefaces: Typefaces;
  readonly sha256: (text: string) => Promise<string>;
  /** YYYY-MM-DD. */
  readonly today: string;
}

/** The widest roll that large-format printers take, mm (44 in; common practice). */
const widestRollMm = 1118;

/** The drawing of what was chosen, or why there is none, one sentence a line. */
export async function makePaper(
  choices: PaperChoices,
  { typefaces, sha256, today }: PaperTools,
): Promise<Result<Drawing, readonly string[]>> {
  const medium = mediumOf(choices);
  if (!medium.ok) return err([medium.error]);
  const { kind, site, formulary } = choices;
  const imprint = await createImprint({
    paper: kind,
    choices: { medium: medium.value },
    softwareVersion: versions.software,
    modelVersion: defaultBodyModel().version,
    site: site?.value,
    formulary: formulary?.value,
    madeOn: today,
    expiresOn: yearAfter(today),
    sha256,
  });
  if (!imprint.ok) return err([imprintSentence(imprint.error)]);
  const context = { typefaces, messages: ENGLISH_PAPER, imprint: imprint.value };
  const drawing = drawChosen({ choices, context, medium: medium.value });
  if (!drawing.ok) return drawing;
  const faults = checkDrawing(drawing.value, typefaces);
  if (faults.length === 0) return drawing;
  const sentences = faults.slice(0, 3).map((fault) => {
    if (fault.type === "glyphs-missing") return paperMessages.glyphsMissing(fault.characters, fault.text);
    return paperMessages.doesNotFit(fault.type === "texts-overlap" ? fault.texts[0] : fault.text);
  });
  return err([paperMessages.cannotDraw, ...sentences]);
}

function drawChosen(given: {
  choices: PaperChoices;
  context: SheetContext;
  medium: StripMedium;
}): Result<Drawing, readonly string[]> {
  const { choices, context, medium } = given;
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
  }
}

function mediumOf({ page, rollWidth }: PaperChoices): Result<StripMedium, string> {
  if (page !== "roll") return ok({ sheet: pageSizes[page] });
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
