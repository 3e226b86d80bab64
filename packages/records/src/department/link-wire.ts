import * as v from "valibot";
import { uuid } from "./wire.ts";

/** As `sealLink` writes it; a text that anybody could read is refused. */
const sealedText: v.GenericSchema<string> = v.pipe(
  v.string(),
  v.maxLength(2_000, "is too long"),
  v.regex(/^1(\.[A-Za-z0-9+/]{4,}={0,2}){3}$/, "must be sealed on the page"),
);
export interface LinkAnswer {
  /** Absent where nobody linked the case. */
  readonly sealed?: string | undefined;
}
export const linkAnswerSchema: v.GenericSchema<LinkAnswer> = v.strictObject({
  sealed: v.optional(sealedText),
});
export interface LinkRequest {
  readonly caseId: string;
  /** `null` takes the link away. */
  readonly sealed: string | null;
}
export const linkRequestSchema: v.GenericSchema<LinkRequest> = v.strictObject({
  caseId: uuid,
  sealed: v.nullable(sealedText),
});
