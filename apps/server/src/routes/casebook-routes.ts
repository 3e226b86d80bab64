import { type CaseEvent, readCaseEvent } from "@steelyard/records/case";
import {
  type AccuracyQuery,
  accuracyAnswerSchema,
  accuracyQuerySchema,
  type CasesQuery,
  caseAnswerSchema,
  caseEventAnswerSchema,
  caseEventRequestSchema,
  caseQuerySchema,
  casesAnswerSchema,
  casesQuerySchema,
} from "@steelyard/records/department";
import { hasRole } from "@steelyard/records/people";
import { daysBetween } from "../study/days-between.ts";
import { isWholeYears, wholeYearsOnly } from "../study/is-whole-years.ts";
import { shuffledPlaces } from "../study/shuffled-places.ts";
import { strikesForeignWork } from "../study/strikes-foreign-work.ts";
import type { Route } from "./route.ts";
import { personOf } from "./who.ts";

/** Points in one chart; a chart of more is a grey band. */
const MOST_POINTS = 2_000;
/** What is written at a desk of the department; what is measured and given comes from the bedside. */
const deskTypes: ReadonlySet<CaseEvent["type"]> = new Set(["later-weight", "note", "undo", "closed"]);

export const casesRoute: Route = {
  method: "GET",
  url: "/api/cases",
  roles: ["clinician"],
  query: casesQuerySchema,
  replies: { 200: casesAnswerSchema },
  handle: async ({ principal, query }, { store }) => {
    const { site, actor } = personOf(principal);
    const page = await store.listCases({ ...(query as CasesQuery), site });
    const detail = { cases: page.cases.length };
    await store.note({ site, actor, action: "cases.list", subject: "casebook", detail });
    return { status: 200, body: page };
  },
};

export const caseRoute: Route = {
  method: "GET",
  url: "/api/case",
  roles: ["clinician"],
  query: caseQuerySchema,
  replies: { 200: caseAnswerSchema },
  handle: async ({ principal, query }, { store, settings }) => {
    const { site, actor } = personOf(principal);
    const { caseId } = query as { readonly caseId: string };
    const events = await store.readCaseEvents({ site, caseId });
    if (events.length === 0) return { status: 404, body: { problem: "unknown-case" } };
    await store.note({ site, actor, action: "case.read", subject: caseId });
    return { status: 200, body: { events, ...(settings.localLink && { localLink: true }) } };
  },
};

export const caseEventRoute: Route = {
  method: "POST",
  url: "/api/case/event",
  roles: ["clinician"],
  body: caseEventRequestSchema,
  replies: { 200: caseEventAnswerSchema },
  handle: async ({ principal, body }, { store }) => {
    const { site, actor } = personOf(principal);
    const read = readCaseEvent((body as { readonly event: unknown }).event);
    if (!read.ok) {
      const [fault] = read.error;
      const reason = fault?.type === "faulty-part" ? `${fault.path}: ${fault.reason}` : fault?.type;
      return { status: 422, body: { problem: "faulty-event", reason: reason?.slice(0, 300) } };
    }
    const event = read.value;
    if (!deskTypes.has(event.type)) {
      return { status: 422, body: { problem: "not-from-the-department", reason: event.type } };
    }
    const known = await store.readCaseEvents({ site, caseId: event.caseId });
    if (known.length === 0) return { status: 404, body: { problem: "unknown-case" } };
    const foreign = strikesForeignWork(event, known);
    if (foreign !== undefined) {
      return { status: 422, body: { problem: "not-from-the-department", reason: foreign } };
    }
    const [stored] = await store.appendEvents({ site, device: "department", actor, events: [event] });
    if (stored?.outcome === "id-taken" || stored?.outcome === "case-purged") {
      return { status: 409, body: { problem: stored.outcome } };
    }
    return { status: 200, body: { cursor: await store.cursorOf({ site, id: event.id }) } };
  },
};

export const accuracyRoute: Route = {
  method: "GET",
  url: "/api/accuracy",
  roles: ["clinician", "reviewer", "researcher"],
  query: accuracyQuerySchema,
  replies: { 200: accuracyAnswerSchema },
  handle: async ({ principal, query }, { store }) => {
    const { site, actor } = personOf(principal);
    const days = query as AccuracyQuery;
    const seesCases = hasRole(principal, ["clinician", "reviewer"]);
    if (!seesCases && !isWholeYears(days)) return wholeYearsOnly;
    const { rows, more } = await store.latestCases({ site, list: "weighed_at", limit: MOST_POINTS, ...days });
    await store.note({
      site,
      actor,
      action: "cases.accuracy",
      subject: seesCases ? "cases" : "without names",
      detail: { cases: rows.length },
    });
    const points = rows.toReversed().flatMap((row) => {
      const { estimate_kg: estimateKg, later_kg: measuredKg, later_on: on } = row;
      if (estimateKg === null || measuredKg === null || on === null) return [];
      return [
        {
          ...(seesCases ? { caseId: row.case_id, code: row.code, at: row.started_at } : {}),
          estimateKg,
          measuredKg,
          daysAfter: daysBetween(row.started_at, on),
          errorPercent: (100 * (estimateKg - measuredKg)) / measuredKg,
        },
      ];
    });
    // The order of time would date each row between its neighbours.
    const shown = seesCases ? points : shuffledPlaces(points.length).flatMap((place) => points[place] ?? []);
    return { status: 200, body: { points: shown, more } };
  },
};
