import { type ExportAnswer, exportAnswerSchema } from "@steelyard/records/department";
import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { saveText } from "../../../effects/save-text.ts";
import { DayRange, isBackward } from "../../components/day-range.tsx";
import { ProblemNote } from "../../components/problem-note.tsx";
import { words } from "../../messages/index.ts";
import { useAct } from "../../state/department-context.ts";

/** A study file without names, for a period. */
export function Export(): VNode {
  const { register } = words;
  const { act, isBusy, problem } = useAct();
  const [days, setDays] = useState({ from: "", to: "" });
  const [made, setMade] = useState<ExportAnswer | undefined>(undefined);
  return (
    <div class="stack narrow">
      <p>{register.exportIntro}</p>
      <form
        class="filters"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          if (isBackward(days)) return;
          setMade(undefined);
          act({ path: "export", query: { ...days }, schema: exportAnswerSchema }, setMade);
        }}
      >
        <DayRange
          days={days}
          onType={(typed) => {
            setMade(undefined);
            setDays(typed);
          }}
        />
        <button class="button button--main" type="submit" aria-disabled={isBusy}>
          {register.makeExport}
        </button>
      </form>
      <ProblemNote problem={problem} />
      <div role="status" class="stack">
        {made !== undefined && (
          <>
            <p>{register.made(made.filename, made.rows)}</p>
            {made.warnings.map(({ rows, fewest }) => (
              <p key={fewest} class="note note--warn">
                {register.fewRows(rows, fewest)}
              </p>
            ))}
            {made.more && <p class="note note--warn">{register.earlier}</p>}
          </>
        )}
      </div>
      {made !== undefined && made.rows > 0 && (
        <>
          <p>
            <button
              class="button"
              type="button"
              onClick={() => saveText({ name: made.filename, text: made.csv, type: "text/csv" })}
            >
              {register.saveFile}
            </button>
          </p>
          <p class="soft">{register.study}</p>
        </>
      )}
    </div>
  );
}
