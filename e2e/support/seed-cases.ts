import { randomUUID } from "node:crypto";
import { estimateWeight } from "@steelyard/core/body";
import { centimetres } from "@steelyard/core/units";

interface Seed {
  readonly url: string;
  /** Token of the device that sends them. */
  readonly token: string;
  readonly cases: number;
}

const dayMs = 86_400_000;
const versions = { software: "0.1.0", model: "2", formulary: "draft", formularySigned: false };

/** Sends invented children to a server as a device does: measured, estimated, and weighed the day after, the latest yesterday. */
export async function seedCases({ url, token, cases }: Seed): Promise<void> {
  for (let n = 0; n < cases; n++) {
    const reply = await fetch(`${url}/api/sync/push`, {
      method: "POST",
      headers: { authorization: `Bearer ${token}`, "content-type": "application/json" },
      body: JSON.stringify({
        protocol: 1,
        sentAt: new Date().toISOString(),
        events: invented(n, Date.now() - (cases - n + 1) * dayMs),
      }),
    });
    if (!reply.ok) throw new Error(`The invented cases were not taken: ${await reply.text()}`);
  }
}

/** Lengths and errors by waves of periods that share no factor: no chance, the same each time. */
function invented(n: number, atMs: number): readonly object[] {
  const lengthCm = 68 + ((n * 37) % 64);
  const estimate = estimateWeight({ lengthCm: centimetres(lengthCm) });
  if (!estimate.ok) throw new RangeError("The model serves these lengths");
  const { totalKg, low95Kg, high95Kg } = estimate.value;
  const at = (minutes: number): string => new Date(atMs + minutes * 60_000).toISOString();
  const head = { format: 1, caseId: randomUUID(), by: "Invented", versions };
  const weighedKg = totalKg * (1.07 + 0.09 * Math.sin(n * 2.4) + 0.05 * Math.sin(n * 1.1));
  const event = (minutes: number, type: string, facts: object): object => ({
    ...head,
    id: randomUUID(),
    at: at(minutes),
    type,
    ...facts,
  });
  return [
    event(0, "case-started", { code: `L${10 + n}-${String.fromCharCode(65 + (n % 23))}RK` }),
    event(1, "measurement", { measurements: { lengthCm } }),
    event(1, "estimate", { estimate: { totalKg, low95Kg, high95Kg, rests: ["lengthCm"] } }),
    event(40, "closed", {}),
    event(41, "later-weight", { kg: Math.round(weighedKg * 10) / 10, on: at(dayMs / 60_000).slice(0, 10) }),
  ];
}
