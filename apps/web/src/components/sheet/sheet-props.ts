import type { Report } from "../../later/compute-report.ts";
import type { Later } from "../../later/later.ts";
import type { FormularyIndex } from "../../state/index-formulary.ts";
import type { BedsideEvent } from "../../state/update.ts";

export interface SheetProps {
  readonly index: FormularyIndex;
  /** The part of the page behind the first screen; absent while it is on its way. */
  readonly later: Later | "failed" | undefined;
  readonly report: Report | undefined;
  readonly search: string;
  readonly turned: readonly string[];
  readonly pinned: readonly string[];
  readonly choices: Readonly<Record<string, string>>;
  readonly printing: boolean;
  readonly send: (event: BedsideEvent) => void;
}
