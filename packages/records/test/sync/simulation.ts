import { type CaseEvent, foldCases } from "@steelyard/records/case";
import { openStore, type Store } from "@steelyard/records/store";
import {
  collected,
  newSyncState,
  nextSyncStep,
  type PullAnswer,
  type PullRequest,
  type PushAnswer,
  type PushRequest,
  pullAnswered,
  pushAnswered,
  recorded,
  resumeSync,
  type SyncState,
  syncFailed,
} from "@steelyard/records/sync";
import { acceptPush, answerPull } from "@steelyard/records/sync-server";
import { event, uuid } from "../case/sample-events.ts";

/** One message between a device and the server, which the network may lose, double, delay and reorder. */
type Message =
  | { type: "push"; device: number; request: PushRequest; answer?: PushAnswer }
  | { type: "pull"; device: number; request: PullRequest; answer?: PullAnswer };

interface Device {
  sync: SyncState;
  /** What it holds on its own disk, by id. */
  readonly held: Map<string, CaseEvent>;
  /** What it remembers to have been acknowledged, and in which life of the store. */
  readonly acknowledged: Map<string, string>;
  readonly skewMs: number;
}

export const deviceCount = 5;
const site = "resus";

/** Five devices, one server, an unreliable network, in one thread and without a clock. */
export class Simulation {
  readonly devices: readonly Device[] = Array.from({ length: deviceCount }, (_, i) => ({
    sync: newSyncState,
    held: new Map(),
    acknowledged: new Map(),
    // One clock is an hour back, one a day ahead, one a year.
    skewMs: [0, -3_600_000, 86_400_000, 0, 31_536_000_000][i] ?? 0,
  }));
  /** Events that were not offered again after a start, as they were known to be on the server. */
  spared = 0;
  /** Everything that was ever made, by the device that made it. */
  readonly made: { device: number; event: CaseEvent }[] = [];
  /** Cases that the site deleted by policy in any life of its store: their events are excused. */
  readonly everPurged = new Set<string>();
  store: Store;
  #network: Message[] = [];
  #seconds = 0;
  #lives = 1;
  #count = 0;

  constructor(store: Store) {
    this.store = store;
  }

  static async start(): Promise<Simulation> {
    const simulation: Simulation = new Simulation(undefined as unknown as Store);
    simulation.store = await simulation.#openStore();
    return simulation;
  }

  async #openStore(): Promise<Store> {
    const life = this.#lives++;
    const store = await openStore({
      database: { type: "sqlite", file: ":memory:" },
      clock: () => new Date(Date.UTC(2026, 10, 25) + this.#seconds * 1_000).toISOString(),
      newId: () => uuid(0xe0000 + life),
    });
    await store.addSite(site);
    return store;
  }

  #nowMs(device: Device): number {
    return Date.UTC(2026, 10, 25) + this.#seconds * 1_000 + device.skewMs;
  }

  #device(i: number): Device {
    const device = this.devices[i];
    if (device === undefined) throw new RangeError(`There is no device ${i}`);
    return device;
  }

  /** Somebody marks something in one of the cases that all devices know. With `clash`, under the id of another's event. */
  record(i: number, caseNumber: number, clash: boolean): void {
    const device = this.#device(i);
    this.#seconds++;
    const other = this.made.find((made) => made.device !== i && !device.held.has(made.event.id));
    const id = clash && other !== undefined ? other.event.id : uuid(++this.#count);
    const made: CaseEvent = {
      ...event(0, 0, { type: "note", text: `Device ${i}, ${this.#count}` }),
      id,
      caseId: uuid(0xca000 + caseNumber),
      at: new Date(this.#nowMs(device)).toISOString(),
    };
    device.held.set(id, made);
    device.sync = recorded(device.sync, [made]);
    this.made.push({ device: i, event: made });
  }

  /** The device does what its state says, up to handing a message to the network. */
  act(i: number): boolean {
    const device = this.#device(i);
    this.#seconds++;
    const step = nextSyncStep(device.sync, this.#nowMs(device));
    if (step.type === "collect") {
      const all = [...device.held.values()];
      const without = collected(device.sync, all).waiting.length;
      device.sync = collected(device.sync, all, device.acknowledged);
      this.spared += without - device.sync.waiting.length;
    } else if (step.type === "push") this.#network.push({ type: "push", device: i, request: step.request });
    else if (step.type === "pull") this.#network.push({ type: "pull", device: i, request: step.request });
    else if (step.type === "wait") this.#seconds += Math.ceil((step.untilMs - this.#nowMs(device)) / 1_000);
    return step.type !== "idle";
  }

  /** A message arrives, at the server or with its answer at the device; with `keep` a copy of it stays on the way. */
  async deliver(pick: number, keep: boolean): Promise<boolean> {
    const at = this.#network.length === 0 ? -1 : pick % this.#network.length;
    const message = this.#network[at];
    if (message === undefined) return false;
    if (!keep) this.#network.splice(at, 1);
    if (message.answer === undefined) await this.#serve(message);
    else this.#receive(message);
    return true;
  }

  async #serve(message: Message): Promise<void> {
    const sender = { site, device: `device-${message.device}` };
    // As on the wire: what arrives is a copy.
    const request = JSON.parse(JSON.stringify(message.request));
    if (message.type === "push") {
      this.#network.push({ ...message, answer: await acceptPush(this.store, sender, request) });
    } else {
      this.#network.push({ ...message, answer: await answerPull(this.store, sender, request) });
    }
  }

  #receive(message: Message): void {
    const device = this.#device(message.device);
    if (message.type === "push" && message.answer !== undefined) {
      device.sync = pushAnswered(device.sync, message.request, message.answer);
      const { acknowledged, epoch } = message.answer;
      // Only what it holds as it was sent: under the id of what was purged meanwhile there may come another event.
      for (const sent of message.request.events as readonly CaseEvent[]) {
        const isHeld = JSON.stringify(device.held.get(sent.id)) === JSON.stringify(sent);
        if (isHeld && acknowledged.includes(sent.id)) device.acknowledged.set(sent.id, epoch);
      }
    }
    if (message.type === "pull" && message.answer !== undefined) {
      const { state, events, purgedCaseIds } = pullAnswered(device.sync, message.request, message.answer);
      device.sync = state;
      for (const [id, { caseId }] of device.held) {
        if (!purgedCaseIds.includes(caseId)) continue;
        device.held.delete(id);
        device.acknowledged.delete(id);
      }
      for (const pulled of events) if (!device.held.has(pulled.id)) device.held.set(pulled.id, pulled);
    }
  }

  /** The page is closed and opened: what waited is known by the events on the disk alone. Some of what was remembered may be lost. */
  restart(i: number, pick: number): void {
    const device = this.#device(i);
    const { epoch, cursor } = device.sync;
    device.sync = epoch === undefined ? newSyncState : { ...newSyncState, epoch, cursor };
    [...device.acknowledged.keys()].forEach((id, n) => {
      if (pick % 3 === 0 && (n + pick) % 7 === 0) device.acknowledged.delete(id);
    });
  }

  lose(pick: number): void {
    if (this.#network.length > 0) this.#network.splice(pick % this.#network.length, 1);
  }

  giveUp(i: number, chance: number): void {
    const device = this.#device(i);
    device.sync = syncFailed(device.sync, { failure: "unreachable", nowMs: this.#nowMs(device), chance });
  }

  /** The server's disk is lost and a backup that holds only the first part of it comes back, as another life. */
  async restore(share: number): Promise<void> {
    const { changes } = await this.store.readChanges({ site, since: 0, limit: 100_000 });
    const kept = changes.slice(0, Math.floor(changes.length * share));
    await this.store.close();
    this.store = await this.#openStore();
    for (const change of kept) {
      if ("event" in change) {
        await this.store.appendEvents({ site, device: "backup", actor: "command", events: [change.event] });
      } else await this.#keepPurged(change.purgedCaseId);
    }
  }

  /** As a backup brings it back: the case is known to be gone, and takes its place among the changes. */
  async #keepPurged(caseId: string): Promise<void> {
    const { db, clock } = this.store;
    const { last_cursor } = await db
      .updateTable("site")
      .set(({ eb }) => ({ last_cursor: eb("last_cursor", "+", 1) }))
      .returning("last_cursor")
      .executeTakeFirstOrThrow();
    const row = { site, cursor: last_cursor, case_id: caseId, at: clock(), events: 0, reason: "backup" };
    await db.insertInto("purged_case").values(row).execute();
  }

  /** The site deletes by policy the cases that nothing reached in the last `seconds`; gives how many. */
  async purge(seconds: number): Promise<number> {
    const untouchedSince = new Date(Date.UTC(2026, 10, 25) + (this.#seconds - seconds) * 1_000).toISOString();
    const policy = { site, actor: "command", untouchedSince, reason: "retention" };
    const { cases } = await this.store.purgeCases(policy);
    for (const id of await this.purgedOnServer()) this.everPurged.add(id);
    return cases;
  }

  /** The network works again and everybody goes on until nobody has anything to do. */
  async settle(): Promise<void> {
    this.#network = [];
    for (const device of this.devices) device.sync = resumeSync(device.sync);
    let lastQuiet = "";
    for (let round = 0; round < 400; round++) {
      let busy = false;
      for (let i = 0; i < deviceCount; i++) busy = this.act(i) || busy;
      while (await this.deliver(0, false)) busy = true;
      if (busy) continue;
      const quiet = this.devices.map(({ sync: { epoch, cursor } }) => `${epoch} ${cursor}`).join();
      if (quiet === lastQuiet) return;
      lastQuiet = quiet;
      // Whoever is idle looks again, as a page does now and then; at rest is who finds nothing new.
      for (const device of this.devices) device.sync = resumeSync(device.sync);
    }
    throw new RangeError("The devices never came to rest");
  }

  async onServer(): Promise<readonly CaseEvent[]> {
    const { changes } = await this.store.readChanges({ site, since: 0, limit: 100_000 });
    return changes.flatMap((change) => ("event" in change ? [change.event] : []));
  }

  async purgedOnServer(): Promise<readonly string[]> {
    const { changes } = await this.store.readChanges({ site, since: 0, limit: 100_000 });
    return changes.flatMap((change) => ("purgedCaseId" in change ? [change.purgedCaseId] : []));
  }

  /** What a device shows of the cases, without what the server refused. */
  shown(device: Device): ReturnType<typeof foldCases> {
    const refused = new Set(device.sync.refused.map(({ event: { id } }) => id));
    return foldCases([...device.held.values()].filter(({ id }) => !refused.has(id)));
  }
}
