import { describeCalibrationIssue } from "@steelyard/core/wording";
import { type FitRequest, fitAnswerSchema, fitRequestSchema } from "@steelyard/records/department";
import manifest from "../../package.json" with { type: "json" };
import { fitCalibration } from "../study/fit-calibration.ts";
import type { Route } from "./route.ts";
import { personOf } from "./who.ts";

/** Children of one fit, the latest: more would hold up every other request, and 1,000 tell a site's shift within 1 %. */
const MOST_CHILDREN = 1_000;

/** Makes a calibration and stores nothing: whoever looked at it stores it as a document, and a reviewer signs that. */
export const fitCalibrationRoute: Route = {
  method: "POST",
  url: "/api/calibration/fit",
  roles: ["reviewer", "clinician"],
  perMinute: 10,
  body: fitRequestSchema,
  replies: { 200: fitAnswerSchema },
  handle: async ({ principal, body }, { store }) => {
    const { site, actor } = personOf(principal);
    const { name, ...days } = body as FitRequest;
    const found = await store.latestCases({ site, list: "weighed_at", limit: MOST_CHILDREN, ...days });
    const records = await store.readCases({ site, caseIds: found.rows.map(({ case_id }) => case_id) });
    await store.note({
      site,
      actor,
      action: "calibration.fit",
      subject: "weighed cases",
      detail: { cases: records.length },
    });
    const fit = fitCalibration(records, {
      name,
      createdOn: store.clock().slice(0, 10),
      software: manifest.version,
    });
    if (fit.ok) return { status: 200, body: { ...fit.value, more: found.more } };
    const reason = describeCalibrationIssue(fit.error).slice(0, 300);
    return { status: 422, body: { problem: fit.error.type, reason } };
  },
};
