import type { DoseLine } from "@steelyard/core/dosing";
import type { VNode } from "preact";
import { useContext } from "preact/hooks";
import { cases } from "../../messages/cases.ts";
import { doseToGive } from "../../state/due.ts";
import { GivingContext } from "../../state/giving.ts";
import { writeQuantity } from "../quantity/quantity.tsx";

/** Marks a line of the sheet as given, in the log of the case; nothing where there is no log. */
export function GiveButton({ line }: { readonly line: DoseLine }): VNode | null {
  const giving = useContext(GivingContext);
  if (giving === undefined) return null;
  const times = giving.timesGiven.get(line.id) ?? 0;
  const { dose } = doseToGive(line, times);
  const written = writeQuantity({ dose });
  return (
    <p class="give screen-only">
      <button class="button give__button" type="button" onClick={() => giving.give(line)}>
        {dose.per === undefined ? cases.give(written) : cases.giveStarted(written)}
      </button>
      {times > 0 && <span>{cases.givenTimes(times)}</span>}
    </p>
  );
}
