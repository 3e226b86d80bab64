import * as v from "valibot";
import { count, dayRange } from "./wire.ts";

export interface ExportQuery {
  readonly from?: string | undefined;
  readonly to?: string | undefined;
}
export const exportQuerySchema: v.GenericSchema<ExportQuery> = v.strictObject(dayRange);

/** A study file without anything that says who the children are. */
export interface ExportAnswer {
  readonly filename: string;
  readonly csv: string;
  readonly rows: number;
  /** `few-rows`: so few children that one may be known by being among them. */
  readonly warnings: readonly { readonly type: "few-rows"; readonly rows: number; readonly fewest: number }[];
  /** There were earlier cases; ask for them by days. */
  readonly more: boolean;
}
export const exportAnswerSchema: v.GenericSchema<ExportAnswer> = v.strictObject({
  filename: v.pipe(v.string(), v.regex(/^[a-z0-9.-]+$/)),
  csv: v.string(),
  rows: count,
  warnings: v.array(v.strictObject({ type: v.literal("few-rows"), rows: count, fewest: count })),
  more: v.boolean(),
});
