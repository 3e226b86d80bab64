import type { CaseEventDraft, CaseRecord } from "@steelyard/records/case";
import type { VNode } from "preact";
import { useId, useState } from "preact/hooks";
import { writeDay } from "../../components/case-log/clock.ts";
import { writeQuantity } from "../../components/quantity/quantity.tsx";
import { cases } from "../../messages/cases.ts";
import { type WeightFault, weightFault } from "../../state/casebook.ts";
import { readDecimal } from "../../state/read-decimal.ts";

interface Props {
  readonly record: CaseRecord;
  readonly onKeep: (draft: CaseEventDraft) => void;
}

/** What the scale said, and on which day; asks once more where the estimate did not think it likely. */
export function LaterWeight({ record, onKeep }: Props): VNode {
  const words = cases.casebook;
  const id = useId();
  const today = writeDay(new Date().toISOString());
  const [text, setText] = useState("");
  const [on, setOn] = useState(today);
  const [fault, setFault] = useState<WeightFault | undefined>(undefined);
  const { laterWeight, estimate } = record;
  const keep = (isSure: boolean): void => {
    const kg = readDecimal(text);
    const found = weightFault(record, { kg, on, today });
    if (kg === undefined || (found !== undefined && !(found === "unlikely" && isSure))) {
      setFault(found ?? "kg");
      return;
    }
    onKeep({ type: "later-weight", kg, on, ...(laterWeight && { replaces: laterWeight.id }) });
    setText("");
    setFault(undefined);
  };
  return (
    <form
      class="later-weight screen-only"
      noValidate
      onSubmit={(submit) => {
        submit.preventDefault();
        keep(false);
      }}
    >
      <label>
        {words.kg}, kg
        <input
          inputMode="decimal"
          value={text}
          maxLength={12}
          autocomplete="off"
          aria-invalid={fault === "kg"}
          aria-describedby={id}
          onInput={({ currentTarget }) => {
            setText(currentTarget.value);
            setFault(undefined);
          }}
        />
      </label>
      <label>
        {words.on}
        <input
          type="date"
          value={on}
          max={today}
          aria-invalid={fault === "day"}
          aria-describedby={id}
          onInput={({ currentTarget }) => setOn(currentTarget.value)}
        />
      </label>
      <button class="button" type="submit">
        {words.saveWeight}
      </button>
      <div id={id} class="later-weight__fault" role="alert">
        {fault === "kg" && words.badKg}
        {fault === "day" && words.badDay}
        {fault === "unlikely" && estimate !== undefined && (
          <>
            <p>
              {words.unlikely(
                writeQuantity({ kg: readDecimal(text) ?? 0 }),
                writeQuantity({ kg: estimate.estimate.low95Kg }),
                writeQuantity({ kg: estimate.estimate.high95Kg }),
              )}
            </p>
            <button class="button" type="button" onClick={() => keep(true)}>
              {words.keepAnyway}
            </button>
          </>
        )}
      </div>
    </form>
  );
}
