import type { DoseLine } from "@steelyard/core/dosing";
import { createContext } from "preact";

/** What a line of the sheet can say to the log of the case. */
export interface Giving {
  readonly give: (line: DoseLine) => void;
  /** How often a line has been given in this case, by id. */
  readonly timesGiven: ReadonlyMap<string, number>;
}

/** Absent until the log is there, and where nothing is logged. */
export const GivingContext = createContext<Giving | undefined>(undefined);
