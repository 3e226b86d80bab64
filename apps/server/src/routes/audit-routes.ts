import {
  type AuditQuery,
  auditAnswerSchema,
  auditQuerySchema,
  auditVerifyAnswerSchema,
  longestAuditList,
  nothing,
} from "@steelyard/records/department";
import type { Route } from "./route.ts";
import { personOf } from "./who.ts";

export const auditRoute: Route = {
  method: "GET",
  url: "/api/audit",
  roles: ["administrator"],
  query: auditQuerySchema,
  replies: { 200: auditAnswerSchema },
  handle: async ({ principal, query }, { store }) => {
    const { site } = personOf(principal);
    const { before, limit = longestAuditList, action, actor } = query as AuditQuery;
    const { entries, nameOf } = await store.listAudit({ site, before, limit: limit + 1, action, actor });
    const shown = entries.slice(0, limit);
    const next = entries.length > limit ? shown.at(-1)?.position : undefined;
    return {
      status: 200,
      body: {
        entries: shown.map((entry) => {
          const { name } = nameOf(entry.actor);
          return {
            position: entry.position,
            at: entry.at,
            actor: entry.actor,
            ...(name === entry.actor ? {} : { actorName: name }),
            action: entry.action,
            subject: entry.subject,
            detail: JSON.parse(entry.detail) as unknown,
          };
        }),
        ...(next === undefined ? {} : { next }),
      },
    };
  },
};

/** Follows the chain of the own site from its first entry; what it finds is told and not put right. */
export const verifyAuditRoute: Route = {
  method: "POST",
  url: "/api/audit/verify",
  roles: ["administrator"],
  perMinute: 10,
  body: nothing,
  replies: { 200: auditVerifyAnswerSchema },
  handle: async ({ principal }, { store }) => {
    const { site, actor } = personOf(principal);
    const { sites, faults } = await store.verifyAudit(site);
    await store.note({
      site,
      actor,
      action: "audit.verify",
      subject: "log",
      detail: { faults: faults.length },
    });
    const [own = { entries: 0, hash: "" }] = sites;
    return {
      status: 200,
      body: {
        whole: faults.length === 0,
        entries: own.entries,
        hash: own.hash,
        faults: faults.slice(0, 100).map(({ site: _, ...fault }) => fault),
      },
    };
  },
};
