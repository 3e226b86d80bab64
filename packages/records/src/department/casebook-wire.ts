import * as v from "valibot";
import type { CaseEvent } from "../case/case-event.ts";
import { caseEventSchema } from "../case/case-event-schema.ts";
import { count, dayRange, instant, limitInQuery, number, uuid } from "./wire.ts";

/** Cases in one answer. */
export const longestCaseList = 100;

/** Which cases of the department, the latest first; days are of the start of the case, in UTC. */
export interface CasesQuery {
  readonly from?: string | undefined;
  readonly to?: string | undefined;
  readonly state?: "open" | "closed" | undefined;
  /** Cases with an estimate that nobody has weighed yet. */
  readonly due?: "weight" | undefined;
  /** The whole code. */
  readonly code?: string | undefined;
  /** `next` of the answer before. */
  readonly before?: string | undefined;
  readonly limit?: number | undefined;
}
export const casesQuerySchema: v.GenericSchema<unknown, CasesQuery> = v.strictObject({
  ...dayRange,
  state: v.optional(v.picklist(["open", "closed"])),
  due: v.optional(v.literal("weight")),
  code: v.optional(v.pipe(v.string(), v.minLength(1), v.maxLength(40, "is too long"))),
  before: v.optional(v.pipe(v.string(), v.regex(/^\S{24} [0-9a-f-]{36}$/, "must be `next` of an answer"))),
  limit: v.optional(limitInQuery(longestCaseList)),
}) as unknown as v.GenericSchema<unknown, CasesQuery>;

/** A case as the list of the department shows it. */
export interface CaseSummary {
  readonly caseId: string;
  /** Empty where its start has not arrived. */
  readonly code: string;
  readonly startedAt: string;
  readonly closedAt?: string | undefined;
  readonly estimateKg?: number | undefined;
  readonly low95Kg?: number | undefined;
  readonly high95Kg?: number | undefined;
  readonly idealKg?: number | undefined;
  readonly laterKg?: number | undefined;
  readonly laterOn?: string | undefined;
  readonly doses: number;
  readonly versions: {
    readonly model: string;
    readonly formulary: string;
    readonly calibration?: string | undefined;
  };
}
export const casesAnswerSchema: v.GenericSchema<{
  readonly cases: readonly CaseSummary[];
  readonly next?: string | undefined;
}> = v.strictObject({
  cases: v.array(
    v.strictObject({
      caseId: uuid,
      code: v.string(),
      startedAt: instant,
      closedAt: v.optional(instant),
      estimateKg: v.optional(number),
      low95Kg: v.optional(number),
      high95Kg: v.optional(number),
      idealKg: v.optional(number),
      laterKg: v.optional(number),
      laterOn: v.optional(v.string()),
      doses: count,
      versions: v.strictObject({
        model: v.string(),
        formulary: v.string(),
        calibration: v.optional(v.string()),
      }),
    }),
  ),
  next: v.optional(v.string()),
});

export const caseQuerySchema: v.GenericSchema<{ readonly caseId: string }> = v.strictObject({ caseId: uuid });
export interface CaseAnswer {
  readonly events: readonly CaseEvent[];
  /** The site keeps sealed names beside its cases. */
  readonly localLink?: true | undefined;
}
export const caseAnswerSchema: v.GenericSchema<CaseAnswer> = v.strictObject({
  events: v.array(caseEventSchema),
  localLink: v.optional(v.literal(true)),
});

/** A later weight, a note, an undo or a correction; read as an event of its own, so that every fault is told. */
export const caseEventRequestSchema: v.GenericSchema<{ readonly event: unknown }> = v.strictObject({
  event: v.unknown(),
}) as v.GenericSchema<{ readonly event: unknown }>;
export const caseEventAnswerSchema: v.GenericSchema<{ readonly cursor: number }> = v.strictObject({
  cursor: count,
});

export interface AccuracyQuery {
  readonly from?: string | undefined;
  readonly to?: string | undefined;
}
export const accuracyQuerySchema: v.GenericSchema<AccuracyQuery> = v.strictObject(dayRange);

/** One case with an estimate and a scale weight. */
export interface AccuracyPoint {
  /** Case, code and start of the case: not for whoever is a researcher only. */
  readonly caseId?: string | undefined;
  readonly code?: string | undefined;
  readonly at?: string | undefined;
  readonly estimateKg: number;
  readonly measuredKg: number;
  /** Days from the start of the case to the weighing. */
  readonly daysAfter: number;
  /** (estimate - measured) / measured, %. */
  readonly errorPercent: number;
}
export interface AccuracyAnswer {
  /** In the order of time; for whoever is a researcher only, in an order by chance. */
  readonly points: readonly AccuracyPoint[];
  /** There were earlier ones; ask for them by days. */
  readonly more: boolean;
}
export const accuracyAnswerSchema: v.GenericSchema<AccuracyAnswer> = v.strictObject({
  points: v.array(
    v.strictObject({
      caseId: v.optional(uuid),
      code: v.optional(v.string()),
      at: v.optional(instant),
      estimateKg: number,
      measuredKg: number,
      daysAfter: v.pipe(v.number(), v.integer()),
      errorPercent: number,
    }),
  ),
  more: v.boolean(),
});
