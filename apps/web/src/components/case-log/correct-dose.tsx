import type { CaseEventDraft, CaseEventOf } from "@steelyard/records/case";
import type { VNode } from "preact";
import { useId, useState } from "preact/hooks";
import { cases } from "../../messages/cases.ts";
import { readDecimal } from "../../state/read-decimal.ts";
import { writeTimeOfDay } from "./clock.ts";

interface Props {
  readonly event: CaseEventOf<"dose-given">;
  readonly onSave: (draft: CaseEventDraft) => void;
  readonly onCancel: () => void;
}

/** What was really given, when, and by whom; stands in place of what was marked. */
export function CorrectDose({ event, onSave, onCancel }: Props): VNode {
  const { given, at, by } = event;
  const id = useId();
  const [amount, setAmount] = useState(`${given.dose.amount}`);
  const [ml, setMl] = useState(given.volume === undefined ? "" : `${given.volume.ml}`);
  const [time, setTime] = useState(writeTimeOfDay(at));
  const [who, setWho] = useState(by ?? "");
  const [fault, setFault] = useState<string | undefined>(undefined);
  const save = (): void => {
    const read = readDecimal(amount);
    const readMl = given.volume === undefined ? undefined : readDecimal(ml);
    const isBadMl = given.volume !== undefined && (readMl === undefined || readMl === 0);
    if (read === undefined || read === 0 || isBadMl) {
      setFault(isBadMl && read !== undefined && read !== 0 ? cases.badVolume : cases.badAmount);
      return;
    }
    onSave({
      type: "dose-given",
      replaces: event.id,
      // A thousandth later, so that the log has the correction after what it corrects.
      at: time === writeTimeOfDay(at) || time === "" ? later(at) : nearest(at, time),
      ...(who.trim() !== "" && { by: who.trim() }),
      given: {
        ...given,
        dose: { ...given.dose, amount: read },
        ...(given.volume !== undefined &&
          readMl !== undefined && { volume: { ...given.volume, ml: readMl } }),
      },
    });
  };
  return (
    <form
      class="correct-dose screen-only"
      onSubmit={(submit) => {
        submit.preventDefault();
        save();
      }}
    >
      <label>
        {cases.amountLabel(given.dose.unit)}
        <input
          inputMode="decimal"
          value={amount}
          onInput={({ currentTarget }) => setAmount(currentTarget.value)}
        />
      </label>
      {given.volume !== undefined && (
        <label>
          {cases.volumeLabel}
          <input inputMode="decimal" value={ml} onInput={({ currentTarget }) => setMl(currentTarget.value)} />
        </label>
      )}
      <label>
        {cases.timeLabel}
        <input type="time" value={time} onInput={({ currentTarget }) => setTime(currentTarget.value)} />
      </label>
      <label>
        {cases.whoLabel}
        <input maxLength={40} value={who} onInput={({ currentTarget }) => setWho(currentTarget.value)} />
      </label>
      <p id={id} role="alert">
        {fault}
      </p>
      <button class="button" type="submit" aria-describedby={id}>
        {cases.saveCorrection}
      </button>
      <button class="link" type="button" onClick={onCancel}>
        {cases.cancel}
      </button>
    </form>
  );
}

function later(at: string): string {
  return new Date(Date.parse(at) + 1).toISOString();
}

/** The moment with that time of day that lies nearest to what was marked: cases run over midnight. */
function nearest(at: string, time: string): string {
  const [hours = 0, minutes = 0] = time.split(":").map(Number);
  const marked = new Date(at).getTime();
  const candidates = [-1, 0, 1].map((days) => {
    const date = new Date(marked);
    date.setDate(date.getDate() + days);
    date.setHours(hours, minutes, 0, 0);
    return date.getTime();
  });
  const best = candidates.toSorted((a, b) => Math.abs(a - marked) - Math.abs(b - marked))[0] ?? marked;
  return new Date(best).toISOString();
}
