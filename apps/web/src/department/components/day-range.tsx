import type { VNode } from "preact";
import { words } from "../messages/index.ts";
import { TextField } from "./text-field.tsx";

/** Days as typed; empty for no bound. */
export interface Days {
  readonly from: string;
  readonly to: string;
}

interface Props {
  readonly days: Days;
  readonly onType: (days: Days) => void;
}

/** A period, both days included. */
export function DayRange({ days, onType }: Props): VNode {
  return (
    <>
      <TextField
        label={words.from}
        type="date"
        value={days.from}
        onType={(from) => onType({ ...days, from })}
      />
      <TextField
        label={words.to}
        type="date"
        value={days.to}
        fault={isBackward(days) ? words.orderOfDays : undefined}
        onType={(to) => onType({ ...days, to })}
      />
    </>
  );
}

export function isBackward({ from, to }: Days): boolean {
  return from !== "" && to !== "" && from > to;
}
