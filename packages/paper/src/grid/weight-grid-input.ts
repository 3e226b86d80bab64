import type { SiteProfile } from "@steelyard/core/body";
import type { PageSize } from "../frame/page-size.ts";
import type { SheetContext } from "../frame/sheet-context.ts";

export interface WeightGridInput extends SheetContext {
  readonly size: PageSize;
  readonly site?: SiteProfile | undefined;
  /** Which girths it goes by. */
  readonly girths: "arm" | "arm-and-waist";
}
