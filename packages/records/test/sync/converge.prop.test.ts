import { canonicalText, foldCases } from "@steelyard/records/case";
import fc from "fast-check";
import { expect, it } from "vitest";
import { deviceCount, Simulation } from "./simulation.ts";

const device = fc.nat({ max: deviceCount - 1 });
const pick = fc.nat({ max: 1_000 });

/** One thing that happens; weights make long quiet stretches as rare as they are at a bedside. */
const step = fc.oneof(
  {
    weight: 30,
    arbitrary: fc.record({
      type: fc.constant("record" as const),
      device,
      caseNumber: fc.nat({ max: 3 }),
      clash: fc.integer({ min: 0, max: 19 }).map((n) => n === 0),
    }),
  },
  { weight: 30, arbitrary: fc.record({ type: fc.constant("act" as const), device }) },
  {
    weight: 40,
    arbitrary: fc.record({ type: fc.constant("deliver" as const), pick, keep: fc.boolean() }),
  },
  { weight: 12, arbitrary: fc.record({ type: fc.constant("lose" as const), pick }) },
  {
    weight: 5,
    arbitrary: fc.record({
      type: fc.constant("give-up" as const),
      device,
      chance: fc.constantFrom(0, 0.5, 0.99),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({ type: fc.constant("restore" as const), share: fc.constantFrom(0, 0.3, 0.9, 1) }),
  },
);

const runs = 20;
const stepsInARun = 500;

it(`five devices converge and lose nothing over ${runs * stepsInARun} random steps`, {
  timeout: 120_000,
}, async () => {
  let [clashes, restores] = [0, 0];
  await fc.assert(
    fc.asyncProperty(fc.array(step, { minLength: stepsInARun, maxLength: stepsInARun }), async (steps) => {
      const simulation = await Simulation.start();
      for (const s of steps) {
        if (s.type === "record") simulation.record(s.device, s.caseNumber, s.clash);
        else if (s.type === "act") simulation.act(s.device);
        else if (s.type === "deliver") await simulation.deliver(s.pick, s.keep);
        else if (s.type === "lose") simulation.lose(s.pick);
        else if (s.type === "give-up") simulation.giveUp(s.device, s.chance);
        else {
          await simulation.restore(s.share);
          restores++;
        }
      }
      await simulation.settle();

      const stored = await simulation.onServer();
      const storedTexts = new Map(stored.map((event) => [event.id, canonicalText(event)]));
      expect(storedTexts.size, "an event is there twice").toBe(stored.length);
      for (const { device: i, event } of simulation.made) {
        const refused = simulation.devices[i]?.sync.refused.find(({ event: { id } }) => id === event.id);
        if (refused === undefined) expect(storedTexts.get(event.id)).toBe(canonicalText(event));
        else {
          clashes++;
          expect(refused.reason.type).toBe("id-taken");
          expect(canonicalText(refused.event), "stays on the device").toBe(canonicalText(event));
        }
      }
      const onServer = foldCases(stored);
      for (const each of simulation.devices) {
        expect(each.sync.waiting).toEqual([]);
        const without = new Set(each.sync.refused.map(({ event: { id } }) => id));
        expect(simulation.shown(each)).toEqual(
          without.size === 0 ? onServer : foldCases(stored.filter(({ id }) => !without.has(id))),
        );
      }
      expect((await simulation.store.verifyAudit()).faults).toEqual([]);
      await simulation.store.close();
    }),
    { seed: 20261125, numRuns: runs },
  );
  // The hard cases did come up.
  expect(clashes).toBeGreaterThan(5);
  expect(restores).toBeGreaterThan(20);
});
