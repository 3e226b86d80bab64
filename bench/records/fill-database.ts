// Fills one database in a process of its own, so that both engines can be filled at once; prints the seconds. Takes what to
// fill as JSON in the first argument.
import type { DatabaseSettings } from "@steelyard/records/store";
import { fill } from "./measure-growth.ts";

export interface FillOrder {
  readonly database: DatabaseSettings;
  readonly events: number;
}

const { database, events } = JSON.parse(process.argv[2] ?? "{}") as FillOrder;
process.stdout.write(String(await fill(database, events)));
