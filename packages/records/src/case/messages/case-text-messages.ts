import type { NumberStyle } from "@steelyard/core/units";
import type { CaseEvent } from "../case-event.ts";

/** Every word of a case written as text. */
export interface CaseTextMessages {
  readonly numbers: NumberStyle;
  readonly title: (code: string) => string;
  readonly started: (at: string) => string;
  readonly versions: (versions: CaseEvent["versions"]) => string;
  /** Beside a dose that was marked while another formulary was in use than the one of the whole. */
  readonly byFormulary: (versions: CaseEvent["versions"]) => string;
  readonly caution: string;
  readonly taken: string;
  readonly corrected: string;
  readonly stopped: string;
  readonly deleted: string;
  readonly undone: string;
  readonly measured: (parts: string) => string;
  readonly estimated: (parts: {
    readonly total: string;
    readonly low: string;
    readonly high: string;
    readonly ideal?: string;
  }) => string;
  readonly second: (parts: string) => string;
  readonly later: (parts: { readonly kg: string; readonly on: string }) => string;
  readonly begun: string;
  readonly by: (who: string) => string;
  readonly of: string;
  readonly yes: string;
  readonly no: string;
  readonly measurements: Readonly<Record<string, string>>;
  /** Measurements that are a word. */
  readonly values: Readonly<Record<string, string>>;
  readonly months: (n: string) => string;
}
