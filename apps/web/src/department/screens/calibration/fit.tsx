import { type FitAnswer, fitAnswerSchema } from "@steelyard/records/department";
import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { DayRange, isBackward } from "../../components/day-range.tsx";
import { ProblemNote } from "../../components/problem-note.tsx";
import { TextField } from "../../components/text-field.tsx";
import { writeError, writeShare } from "../../components/write-percent.ts";
import { words } from "../../messages/index.ts";
import { useAct } from "../../state/department-context.ts";
import { missingFault } from "../account/account-faults.ts";
import { KeepDraft } from "../documents/keep-draft.tsx";

/** A calibration from the cases of a period, and how good it is on children it has not seen. Nothing is kept before somebody says so. */
export function Fit(): VNode {
  const { documents: said } = words;
  const { act, isBusy, problem } = useAct();
  const [name, setName] = useState("");
  const [days, setDays] = useState({ from: "", to: "" });
  const [isTried, setTried] = useState(false);
  const [fitted, setFitted] = useState<FitAnswer | undefined>(undefined);
  const submit = (): void => {
    setTried(true);
    if (missingFault(name) !== undefined || isBackward(days)) return;
    setFitted(undefined);
    const body = {
      name: name.trim(),
      ...(days.from !== "" && { from: days.from }),
      ...(days.to !== "" && { to: days.to }),
    };
    act({ path: "calibration/fit", body, schema: fitAnswerSchema }, setFitted);
  };
  return (
    <section class="stack screen-only" aria-labelledby="fit">
      <h2 id="fit">{said.fitTitle}</h2>
      <form
        class="stack"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          submit();
        }}
      >
        <TextField
          label={said.calibrationName}
          value={name}
          hint={said.calibrationNameHint}
          maxLength={80}
          fault={isTried ? missingFault(name) : undefined}
          onType={setName}
        />
        <div class="filters">
          <DayRange days={days} onType={setDays} />
        </div>
        <ProblemNote problem={problem} />
        <p>
          <button class="button button--main" type="submit" aria-disabled={isBusy}>
            {said.fit}
          </button>
        </p>
      </form>
      {fitted !== undefined && <Fitted fitted={fitted} />}
    </section>
  );
}

/** What came of a fit: from whom, how good, and the way to keep it. */
export function Fitted({ fitted }: { readonly fitted: FitAnswer }): VNode {
  const { documents: said } = words;
  const { rows, leftOut, more, accuracy, shiftWithinPercent, childrenForOnePercent, label, content } = fitted;
  return (
    <div class="stack">
      <p class="note note--warn">{words.unsigned}</p>
      <p role="status">{said.fitted(rows)}</p>
      {leftOut.length > 0 && (
        <ul class="faults">
          {leftOut.map((one) => (
            <li key={one.reason}>{said.leftOut(one.reason, one.rows)}</li>
          ))}
        </ul>
      )}
      {more && <p>{said.moreCases}</p>}
      {accuracy === undefined ? (
        <p class="note note--warn">{said.tooFewToJudge}</p>
      ) : (
        <Judged accuracy={accuracy} />
      )}
      <p class="soft">
        {said.shift(writeShare(shiftWithinPercent))} {said.forOnePercent(childrenForOnePercent)}
      </p>
      <KeepDraft kind="calibration" label={label} button={said.store} content={() => content} />
    </div>
  );
}

function Judged({ accuracy }: { readonly accuracy: NonNullable<FitAnswer["accuracy"]> }): VNode {
  const { documents: said } = words;
  const { before, after, within10Gain: gain } = accuracy;
  const rows = [
    [said.meanError, writeError(before.meanErrorPercent), writeError(after.meanErrorPercent)],
    [said.rmspe, writeShare(before.rmspe), writeShare(after.rmspe)],
    [said.within10, writeShare(before.within10Percent), writeShare(after.within10Percent)],
    [said.within20, writeShare(before.within20Percent), writeShare(after.within20Percent)],
    [said.coverage, writeShare(before.coveragePercent), writeShare(after.coveragePercent)],
  ] as const;
  return (
    <>
      <table>
        <caption>{said.accuracy}</caption>
        <thead>
          <tr>
            <th scope="col">{said.measure}</th>
            <th scope="col" class="number">
              {said.before}
            </th>
            <th scope="col" class="number">
              {said.after}
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map(([name, was, is]) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td class="number">{was}</td>
              <td class="number">{is}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p>
        {said.gain({ value: writeError(gain.value), low: writeError(gain.low), high: writeError(gain.high) })}
      </p>
      {gain.low <= 0 && <p class="note note--warn">{said.noGain}</p>}
    </>
  );
}
