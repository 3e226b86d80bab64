import {
  collected,
  type DocumentsInForce,
  documentsInForceSchema,
  newSyncState,
  nextSyncStep,
  type PullAnswer,
  type PushAnswer,
  pullAnswered,
  pullAnswerSchema,
  pushAnswered,
  pushAnswerSchema,
  recorded,
  resumeSync,
  type SyncState,
  syncFailed,
} from "@steelyard/records/sync";
import { type GenericSchema, safeParse } from "valibot";
import type { CaseDesk } from "../../state/case-desk.ts";
import { type DepartmentState, unlinked } from "../../state/department.ts";
import { departmentKey, findDepartment, type KeptDepartment, keepDepartment } from "../kept-department.ts";
import { acknowledgedOn, forgetAcknowledged, rememberAcknowledged } from "./acknowledged.ts";
import { departmentDocuments } from "./department-documents.ts";

/** Cases of other devices are asked for this often while nothing else happens, ms. */
const lookMs = 30_000;
/** A server that does not answer for so long is asked again later, ms. */
const patienceMs = 15_000;

/** The exchange of this tab with the server of the department. */
export interface Department {
  readonly state: () => DepartmentState;
  readonly subscribe: (tell: () => void) => () => void;
  readonly link: (token: string) => void;
  /** With `drop`, what the department handed out is not used any more from the next child on. */
  readonly unlink: (drop: boolean) => Promise<void>;
}

type Answer<T> =
  | { readonly type: "answer"; readonly value: T }
  | { readonly type: NonNullable<DepartmentState["trouble"]> };

/**
 * Sends what the desk holds and fetches what it lacks, for as long as the device has a token. Never in the way: the desk keeps everything
 * first, and a server that is not there changes nothing but what is told here.
 *
 * After a start everything readable is offered once more but what the server has acknowledged; it knows what it has, so that offering
 * again does no harm.
 */
export function openDepartment(desk: CaseDesk): Department {
  let kept = findDepartment();
  let sync: SyncState = startOf(kept);
  let state: DepartmentState = unlinked;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let isBusy = false;
  /** Grows with each link and each end of one: what was asked for under another is not an answer to this one. */
  let links = 0;
  /** Events of the desk that the exchange has been given, or that came by it. */
  const offered = new Set<string>();
  const tellers = new Set<() => void>();
  const documents = departmentDocuments(
    () => kept,
    (calibration) => {
      const { calibration: _, ...others } = kept ?? {};
      if (kept !== undefined) change({ ...others, token: kept.token, ...(calibration && { calibration }) });
    },
  );
  const change = (now: KeptDepartment): void => {
    kept = now;
    keepDepartment(now);
  };
  const begin = (now: KeptDepartment | undefined): void => {
    links += 1;
    kept = now;
    sync = startOf(now);
    offered.clear();
  };

  const tell = (told: Partial<DepartmentState> = {}): void => {
    const { trouble: _, ...rest } = state;
    const refused = sync.refused.map(({ reason }) => reason.type);
    state =
      kept === undefined
        ? unlinked
        : { ...rest, ...told, ...documents.state(), link: "on", waiting: sync.waiting.length, refused };
    for (const each of tellers) each();
  };
  const soon = (ms: number): void => {
    clearTimeout(timer);
    timer = setTimeout(() => void run(), ms);
  };
  const fail = (type: Exclude<Answer<unknown>["type"], "answer">): void => {
    const failure = type === "no-server" ? "unreachable" : type;
    sync = syncFailed(sync, { failure, nowMs: Date.now(), chance: Math.random() });
    tell({ trouble: type });
  };
  const reached = (): void => {
    if (kept !== undefined && (kept.epoch !== sync.epoch || kept.cursor !== sync.cursor)) {
      const { token, link } = kept;
      const { calibration } = findDepartment() ?? kept;
      change({
        token,
        ...(link && { link }),
        cursor: sync.cursor,
        ...(sync.epoch && { epoch: sync.epoch }),
        ...(calibration && { calibration }),
      });
    }
    tell({ reachedAt: Date.now() });
  };

  /** One step; what follows from it is asked for at its end. */
  const step = async (token: string): Promise<number | undefined> => {
    const link = kept?.link;
    const mine = links;
    const next = nextSyncStep(sync, Date.now());
    switch (next.type) {
      case "collect": {
        // Before the disk was read there is nothing to collect, and what it holds would be taken for new; `takeUp` comes back to this.
        if (desk.state().keeps === "opening") return undefined;
        const { epoch } = sync;
        const known = link && epoch ? await acknowledgedOn(link, epoch) : undefined;
        if (mine !== links) return 0;
        // Looked at only now: something may have been marked meanwhile.
        const { events } = desk.state();
        for (const { id } of events) offered.add(id);
        sync = collected(sync, events, known);
        return 0;
      }
      case "push": {
        const answer = await ask<PushAnswer>(token, pushAnswerSchema, "push", next.request);
        if (answer.type !== "answer") {
          if (mine === links) fail(answer.type);
        } else {
          const held = new Set(desk.state().events.map(({ id }) => id));
          const { epoch, acknowledged } = answer.value;
          const known = acknowledged.filter((id) => held.has(id));
          if (mine === links) sync = pushAnswered(sync, next.request, answer.value);
          // Under the link that it was asked by, whatever has been linked since.
          if (link !== undefined) await rememberAcknowledged(link, epoch, known);
          if (mine === links) reached();
        }
        return 0;
      }
      case "pull": {
        const query = Object.entries(next.request).map(([name, value]) => [name, String(value)]);
        const address = `pull?${new URLSearchParams(query)}`;
        const answer = await ask<PullAnswer>(token, pullAnswerSchema, address);
        if (mine !== links) return 0;
        if (answer.type !== "answer") {
          fail(answer.type);
          return 0;
        }
        const pulled = pullAnswered(sync, next.request, answer.value);
        for (const { id } of pulled.events) offered.add(id);
        const held = new Set(desk.state().events.map(({ id }) => id));
        await desk.take(pulled.events);
        // What came from the server is on it: not offered at the next start either.
        const come = pulled.events.map(({ id }) => id).filter((id) => !held.has(id));
        if (link !== undefined) await rememberAcknowledged(link, answer.value.epoch, come);
        for (const caseId of pulled.purgedCaseIds) {
          const gone = desk.state().events.filter((event) => event.caseId === caseId);
          await forgetAcknowledged(gone.map(({ id }) => id));
          await desk.purge(caseId);
        }
        if (mine !== links) return 0;
        // Only now: what was pulled and not kept would be passed over the next time.
        sync = pulled.state;
        reached();
        return 0;
      }
      case "wait":
        return Math.max(next.untilMs - Date.now(), 0);
      case "idle":
        await documents.look(async (query) => {
          const answer = await ask<DocumentsInForce>(token, documentsInForceSchema, `documents?${query}`);
          // A server that has none, or does not answer, says so at the next pull.
          return answer.type === "answer" ? answer.value : undefined;
        });
        if (mine !== links) return 0;
        tell(state.trouble === undefined ? {} : { trouble: state.trouble });
        sync = { ...sync, mustPull: true };
        return lookMs;
      case "halted":
        tell({ trouble: next.why });
        return undefined;
    }
  };
  const run = async (): Promise<void> => {
    const token = kept?.token;
    if (isBusy || token === undefined) return;
    isBusy = true;
    const mine = links;
    try {
      const ms = await step(token);
      if (ms !== undefined) soon(ms);
    } catch {
      // A desk that cannot keep what was pulled has said so itself.
      if (mine === links) fail("unreachable");
      soon(mine === links ? lookMs : 0);
    } finally {
      isBusy = false;
    }
  };
  const takeUp = (): void => {
    const fresh = desk.state().events.filter(({ id }) => !offered.has(id));
    if (kept !== undefined && sync.mustCollect) soon(0);
    if (kept === undefined || sync.mustCollect || fresh.length === 0) return;
    for (const { id } of fresh) offered.add(id);
    sync = recorded(sync, fresh);
    tell(state.trouble === undefined ? {} : { trouble: state.trouble });
    soon(0);
  };

  desk.subscribe(takeUp);
  addEventListener("online", () => {
    if (kept === undefined) return;
    sync = resumeSync(sync);
    soon(0);
  });
  addEventListener("storage", ({ key }) => {
    if (key !== null && key !== departmentKey) return;
    // Another tab has linked the device or ended its link: keeping this one's would bring back what is over.
    const now = findDepartment();
    if (now?.token === kept?.token && now?.link === kept?.link) return;
    clearTimeout(timer);
    void documents.end(false).then(() => tell());
    begin(now);
    tell();
    soon(0);
  });
  tell();
  soon(0);
  return {
    state: () => state,
    subscribe: (own) => {
      tellers.add(own);
      return () => tellers.delete(own);
    },
    link: (token) => {
      void documents.end(false);
      begin({ token, link: crypto.randomUUID() });
      keepDepartment(kept);
      tell();
      soon(0);
    },
    unlink: async (drop) => {
      clearTimeout(timer);
      const ended = documents.end(drop);
      begin(undefined);
      await ended;
      // Unless it was linked anew meanwhile.
      if (kept === undefined) keepDepartment(undefined);
      tell();
    },
  };
}

function startOf(kept: KeptDepartment | undefined): SyncState {
  const { epoch, cursor } = kept ?? {};
  return epoch === undefined || cursor === undefined ? newSyncState : { ...newSyncState, epoch, cursor };
}

/** Asks the server under the page's own address; whatever does not fit the schema is no answer. */
async function ask<T>(
  token: string,
  schema: GenericSchema<T>,
  address: string,
  body?: unknown,
): Promise<Answer<T>> {
  try {
    const reply = await fetch(`/api/sync/${address}`, {
      method: body === undefined ? "GET" : "POST",
      headers: {
        authorization: `Bearer ${token}`,
        ...(body === undefined ? {} : { "content-type": "application/json" }),
      },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
      cache: "no-store",
      signal: AbortSignal.timeout(patienceMs),
    });
    if (reply.status === 401 || reply.status === 403) return { type: "not-enrolled" };
    // A server of the page alone knows nothing of records.
    if (reply.status === 404 || reply.status === 405) return { type: "no-server" };
    const value: unknown = await reply.json();
    if (reply.status === 400 && (value as { problem?: unknown } | null)?.problem === "unknown-protocol") {
      return { type: "update-needed" };
    }
    const read = safeParse(schema, value);
    return reply.ok && read.success ? { type: "answer", value: read.output } : { type: "unreachable" };
  } catch {
    return { type: "unreachable" };
  }
}
