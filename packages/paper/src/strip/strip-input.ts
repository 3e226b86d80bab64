import type { BodyModel, SiteProfile } from "@steelyard/core/body";
import type { PageSize } from "../frame/page-size.ts";
import type { SheetContext } from "../frame/sheet-context.ts";

/** What the strip is printed on: sheets of a size, or one roll of a width in mm. */
export type StripMedium = { readonly sheet: PageSize } | { readonly rollWidthMm: number };

export interface StripInput extends SheetContext {
  readonly medium: StripMedium;
  readonly site?: SiteProfile | undefined;
  readonly model?: BodyModel | undefined;
}
