import {
  collected,
  newSyncState,
  nextSyncStep,
  type PushAnswer,
  pushAnswered,
  recorded,
  type SyncState,
  syncFailed,
} from "@steelyard/records/sync";

/** One device under load: it makes events, sends them as the page does, and remembers what was acknowledged. */
export interface Writer {
  readonly acknowledged: ReadonlySet<string>;
  readonly made: () => number;
  readonly waiting: () => number;
  /** One push to `url`; whether it was answered. Whatever happens, the state of the device says what is left to do. */
  readonly push: (url: string) => Promise<boolean>;
}

const LEFT_OVER = 12;
const caseIds = ["00000000-0000-4000-8000-00000000ca5e", "00000000-0000-4000-8000-00000000ca5f"];
const versions = { software: "0.1.0", model: "2026.1", formulary: "2026-11-25", formularySigned: false };

export interface WriterOptions {
  readonly token: string;
  /** Tells the ids of writers apart. */
  readonly number: number;
  /** In [0, 1), seeded. */
  readonly chance: () => number;
}

export function createWriter({ token, number, chance }: WriterOptions): Writer {
  let state: SyncState = collected(newSyncState, []);
  let count = 0;
  const acknowledged = new Set<string>();
  const make = () => {
    count++;
    const id = `00000000-0000-4000-8${String(number).padStart(3, "0")}-${String(count).padStart(12, "0")}`;
    const caseId = caseIds[count % 2] ?? "";
    const at = new Date().toISOString();
    return {
      format: 1,
      id,
      caseId,
      at,
      versions,
      type: "note",
      text: `Event ${count} of ${number}`,
    } as const;
  };
  return {
    acknowledged,
    made: () => count,
    waiting: () => state.waiting.length,
    push: async (url) => {
      // As many as a device may have left over from the last life of the server, and no more.
      const fresh = state.waiting.length < LEFT_OVER ? 1 + Math.floor(chance() * 4) : 0;
      state = recorded(state, Array.from({ length: fresh }, make));
      // The wait after a failure is for a bedside; here the next push comes at once.
      const step = nextSyncStep({ ...state, notBeforeMs: 0 }, Date.now());
      if (step.type !== "push") return true;
      try {
        const reply = await fetch(`${url}/api/sync/push`, {
          method: "POST",
          headers: { "content-type": "application/json", authorization: `Bearer ${token}` },
          body: JSON.stringify(step.request),
          signal: AbortSignal.timeout(10_000),
        });
        if (reply.status !== 200) throw new Error(`Answered ${reply.status}`);
        const answer = (await reply.json()) as PushAnswer;
        for (const id of answer.acknowledged) acknowledged.add(id);
        state = pushAnswered(state, step.request, answer);
        return true;
      } catch {
        state = syncFailed(state, { failure: "unreachable", nowMs: Date.now(), chance: chance() });
        return false;
      }
    },
  };
}
