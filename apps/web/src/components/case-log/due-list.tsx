import type { DoseLine, TrackedDoses } from "@steelyard/core/dosing";
import { describeTrackingWarning } from "@steelyard/core/wording";
import type { VNode } from "preact";
import { cases } from "../../messages/cases.ts";
import { language } from "../../messages/language.ts";
import { sheetMessages } from "../../messages/sheet.ts";
import { doseToGive, dueAt } from "../../state/due.ts";
import { Quantity, writeQuantity } from "../quantity/quantity.tsx";
import { writeClock } from "./clock.ts";

interface Props {
  readonly tracked: TrackedDoses;
  readonly nowMinutes: number;
  /** The clock runs: what is due is counted down. */
  readonly isRunning: boolean;
  /** The line of the sheet as it stands now; absent where the child has no weight any more. */
  readonly lineOf: (lineId: string) => DoseLine | undefined;
  readonly onGive: (line: DoseLine) => void;
}

/** Of each line that was given: the total, what is left, when the next dose is due, and a button that marks it. */
export function DueList({ tracked, nowMinutes, isRunning, lineOf, onGive }: Props): VNode {
  if (tracked.lines.length === 0 && tracked.warnings.length === 0) {
    return <p class="case-log__none">{cases.nothingGiven}</p>;
  }
  return (
    <ul class="due-list">
      {tracked.lines.map((line) => {
        const {
          lineId,
          medicine,
          use,
          doses,
          total,
          totalOfMedicine,
          maximum,
          remaining,
          dosesLeft,
          nextDue,
        } = line;
        const due = nextDue && dueAt(nextDue, nowMinutes);
        const now = lineOf(lineId);
        const warnings = tracked.warnings.filter((warning) => warning.lineId === lineId);
        return (
          <li key={lineId} data-due={lineId}>
            <p class="due-list__name">
              <b>{medicine}</b> {use}
            </p>
            {isRunning && due !== undefined && nextDue !== undefined && (
              <p class={`due-list__due due-list__due--${due.type}`}>
                <b>{cases.due(due, writeClock)}</b>{" "}
                <span>
                  {cases.dueBetween(
                    writeClock(nextDue.earliestMinutes * 60),
                    writeClock(nextDue.latestMinutes * 60),
                  )}
                </span>
              </p>
            )}
            <p class="due-list__total">
              {cases.doses(doses, writeQuantity({ dose: total }))}
              {writeQuantity({ dose: total }) !== writeQuantity({ dose: totalOfMedicine }) &&
                `; ${cases.medicineTotal(writeQuantity({ dose: totalOfMedicine }))}`}
              {remaining !== undefined && (
                <>
                  ; <RemainingWords amount={writeQuantity({ dose: remaining })} hours={maximum?.withinH} />
                </>
              )}
              {dosesLeft !== undefined && `; ${cases.dosesLeft(dosesLeft)}`}
            </p>
            {warnings.map((warning) => (
              <p
                key={`${warning.type}-${"atMinutes" in warning ? warning.atMinutes : ""}`}
                class="due-list__warning"
              >
                {describeTrackingWarning(warning, language?.dosing)}
              </p>
            ))}
            {isRunning && now !== undefined && (
              <button class="button give__button" type="button" onClick={() => onGive(now)}>
                {cases.give(writeQuantity({ dose: doseToGive(now, doses).dose }))}
                <DrawUp line={now} times={doses} />
              </button>
            )}
          </li>
        );
      })}
    </ul>
  );
}

function RemainingWords({
  amount,
  hours,
}: {
  readonly amount: string;
  readonly hours: number | undefined;
}): VNode {
  return <>{cases.remaining(amount, hours === undefined ? undefined : `${hours}`)}</>;
}

/** The volume to draw up, where the dose is drawn up. */
function DrawUp({ line, times }: { readonly line: DoseLine; readonly times: number }): VNode | null {
  const { volume } = doseToGive(line, times);
  if (volume === undefined) return null;
  return (
    <span class="due-list__draw">
      <Quantity dose={{ amount: volume.ml, unit: "mL" }} /> {sheetMessages.of} {volume.strength}
    </span>
  );
}
