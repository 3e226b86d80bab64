import type { RecordsResult } from "./records-result.ts";

/** What is assumed of a network of hospitals; nobody has counted. Each is named in `docs/scale.md`. */
export const assumptions = {
  hospitals: 5_000,
  childrenPerHospitalAndYear: 300,
  eventsPerChild: 11,
  /** Of the busiest minutes over the mean of the year. */
  peak: 20,
  devicesPerHospital: 6,
  /** Of the devices of a hospital whose page is open at the busiest time. */
  openShare: 0.7,
  secondsBetweenLooks: 30,
  eventsHeldByDevice: 200,
} as const;

export interface Load {
  readonly eventsPerYear: number;
  readonly peakEventsPerSecond: number;
  readonly looksPerSecond: number;
  /** By all devices, each what it holds, once a backup was restored. */
  readonly eventsOfferedAgain: number;
}

export function loadOf(of: typeof assumptions): Load {
  const eventsPerYear = of.hospitals * of.childrenPerHospitalAndYear * of.eventsPerChild;
  const devices = of.hospitals * of.devicesPerHospital;
  return {
    eventsPerYear,
    peakEventsPerSecond: (eventsPerYear / (365 * 86_400)) * of.peak,
    looksPerSecond: (devices * of.openShare) / of.secondsBetweenLooks,
    eventsOfferedAgain: devices * of.eventsHeldByDevice,
  };
}

export interface Capacity {
  /** Pushes of one event each, of many sites, at the best number of connections. */
  readonly pushesPerSecond: number;
  /** The same, all of one site. */
  readonly pushesPerSecondOfOneSite: number;
  /** Events in pushes of fifty, of many sites. */
  readonly eventsPerSecond: number;
  readonly looksPerSecond: number;
}

/** The best that one machine did. */
export function capacityOf(intake: RecordsResult["intake"]["postgres"]): Capacity {
  const best = (
    pick: (step: (typeof intake)[number]) => boolean,
    of: "requestsPerSecond" | "eventsPerSecond",
  ) => Math.max(0, ...intake.filter(pick).map((step) => step[of]));
  return {
    pushesPerSecond: best(
      ({ sites, eventsPerPush }) => sites > 1 && eventsPerPush === 1,
      "requestsPerSecond",
    ),
    pushesPerSecondOfOneSite: best(
      ({ sites, eventsPerPush }) => sites === 1 && eventsPerPush === 1,
      "requestsPerSecond",
    ),
    eventsPerSecond: best(({ sites, eventsPerPush }) => sites > 1 && eventsPerPush > 1, "eventsPerSecond"),
    looksPerSecond: best(({ eventsPerPush }) => eventsPerPush === 0, "requestsPerSecond"),
  };
}

/** On the disk for one event, with its indexes and its share of the audit log, bytes; of the largest fill of an engine. */
export function bytesPerEvent(growth: RecordsResult["growth"], engine: "sqlite" | "postgres"): number {
  const largest = growth.filter((each) => each.engine === engine).sort((a, b) => b.events - a.events)[0];
  if (largest === undefined)
    throw new RangeError(`Cannot say what an event takes as ${engine} was not filled`);
  return Math.round(largest.bytes / largest.events);
}
