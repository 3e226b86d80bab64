import type { BodyModel, SiteProfile } from "@steelyard/core/body";
import type { Result } from "@steelyard/core/result";
import { ok } from "@steelyard/core/result";
import type { Drawing, Item, Page } from "../drawing/item.ts";
import type { PageSize } from "../frame/page-size.ts";
import type { SheetContext } from "../frame/sheet-context.ts";
import { drawChart } from "./draw-chart.ts";
import { createStripChart, type StripChart } from "./strip-chart.ts";
import { layOutRoll, layOutSheets, showsChart, type StripLayout, type TooNarrow } from "./strip-layout.ts";

/** What the strip is printed on: sheets of a size, or one roll of a width in mm. */
export type StripMedium = { readonly sheet: PageSize } | { readonly rollWidthMm: number };

export interface StripInput extends SheetContext {
  readonly medium: StripMedium;
  readonly site?: SiteProfile | undefined;
  readonly model?: BodyModel | undefined;
}

export function drawStrip(input: StripInput): Result<Drawing, TooNarrow> {
  const { medium, typefaces, messages, site, model } = input;
  const layout = "sheet" in medium ? layOutSheets(medium.sheet) : layOutRoll(medium);
  if (!layout.ok) return layout;
  const { chartWidthMm, joinsCm, pages } = layout.value;
  const chart = createStripChart({ typefaces, messages: messages.strip, widthMm: chartWidthMm, site, model, joinsCm });
  return ok({
    title: messages.strip.title,
    language: messages.language,
    pages: pages.map((_, index) => drawPage({ ...input, layout: layout.value, chart, index })),
  });
}

function drawPage(given: StripInput & { layout: StripLayout; chart: StripChart; index: number }): Page {
  const { layout, chart, index, messages } = given;
  const page = layout.pages[index];
  if (page === undefined) throw new RangeError(`Cannot draw page ${index} as the strip has none`);
  const items: Item[] = [];
  if (showsChart(page)) items.push(drawChart({ chart, layout, page, messages: messages.strip }));
  return { widthMm: layout.widthMm, heightMm: layout.heightMm, label: String(index + 1), items };
}
