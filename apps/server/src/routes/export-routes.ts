import { fewestResearchRows, writeResearchRows } from "@steelyard/records/case";
import { type ExportQuery, exportAnswerSchema, exportQuerySchema } from "@steelyard/records/department";
import { isWholeYears, wholeYearsOnly } from "../study/is-whole-years.ts";
import { shuffledPlaces } from "../study/shuffled-places.ts";
import type { Route } from "./route.ts";
import { personOf } from "./who.ts";

/** Cases in one file. */
const MOST_CASES = 5_000;

/** A study file without anything that says who the children are; the log says who took how many. */
export const exportRoute: Route = {
  method: "GET",
  url: "/api/export",
  roles: ["researcher"],
  perMinute: 10,
  query: exportQuerySchema,
  replies: { 200: exportAnswerSchema },
  handle: async ({ principal, query }, { store }) => {
    const { site, actor } = personOf(principal);
    const days = query as ExportQuery;
    if (!isWholeYears(days)) return wholeYearsOnly;
    const found = await store.latestCases({ site, list: "listed_at", limit: MOST_CASES, ...days });
    const records = await store.readCases({ site, caseIds: found.rows.map(({ case_id }) => case_id) });
    const { csv, rows } = writeResearchRows(records, { order: shuffledPlaces(records.length) });
    await store.note({ site, actor, action: "cases.export", subject: "without names", detail: { rows } });
    return {
      status: 200,
      body: {
        filename: "cases-without-names.csv",
        csv,
        rows,
        warnings:
          rows > 0 && rows < fewestResearchRows
            ? [{ type: "few-rows", rows, fewest: fewestResearchRows }]
            : [],
        more: found.more,
      },
    };
  },
};
