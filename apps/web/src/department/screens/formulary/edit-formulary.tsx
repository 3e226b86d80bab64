import type { Formulary } from "@steelyard/core/dosing";
import { compareFormularies, describeDifference, writeFormulary } from "@steelyard/formulary/ownership";
import type { VNode } from "preact";
import { useEffect, useMemo, useReducer, useState } from "preact/hooks";
import { FormularyText } from "../../../components/formulary-text/formulary-text.tsx";
import { EffectTable } from "../../components/effect-table.tsx";
import { SelectLine } from "../../components/select-line.tsx";
import { SureButton } from "../../components/sure-button.tsx";
import { TextField } from "../../components/text-field.tsx";
import { words } from "../../messages/index.ts";
import { hashOf } from "../../state/department-screens.ts";
import { isChanged, readEdit, startEdit, updateEdit } from "../../state/formulary-edit.ts";
import { effectOn } from "../../state/formulary-effect.ts";
import { KeepDraft } from "../documents/keep-draft.tsx";
import { EditMedicine } from "./edit-medicine.tsx";
import { WithFormulary } from "./with-formulary.tsx";

/** How long a pause in typing is before the whole is checked again, ms: a check takes about a tenth of a second. */
const pauseMs = 300;

/** One version, changed into a new one. */
export function EditFormulary({ sha256 }: { readonly sha256: string }): VNode {
  const { documents } = words;
  return (
    <div class="stack">
      <p class="screen-only">
        <a class="case-page__back" href={hashOf("formulary")}>
          {documents.all}
        </a>
      </p>
      <WithFormulary sha256={sha256}>
        {({ formulary, label }) => <Editor base={formulary} label={label} />}
      </WithFormulary>
    </div>
  );
}

function Editor({ base, label }: { readonly base: Formulary; readonly label: string }): VNode {
  const { formulary: said, documents } = words;
  const [edit, send] = useReducer(updateEdit, base, startEdit);
  const [medicineId, setMedicine] = useState(base.medicines[0]?.id ?? "");
  const [checkedEdit, setChecked] = useState(edit);
  const read = useMemo(() => readEdit(checkedEdit), [checkedEdit]);
  const isChecking = checkedEdit !== edit;
  const hasChanges = isChanged(edit);
  useEffect(() => {
    if (checkedEdit === edit) return;
    const pause = setTimeout(() => setChecked(edit), pauseMs);
    return () => clearTimeout(pause);
  }, [edit, checkedEdit]);
  useEffect(() => {
    if (!hasChanges) return;
    const warn = (event: BeforeUnloadEvent): void => event.preventDefault();
    addEventListener("beforeunload", warn);
    return () => removeEventListener("beforeunload", warn);
  }, [hasChanges]);

  const after = read.ok ? read.value : undefined;
  const changes = useMemo(
    () => (after === undefined ? [] : compareFormularies(base, after).map(describeDifference)),
    [base, after],
  );
  const effect = useMemo(
    () => (after === undefined ? undefined : effectOn(base, after, [medicineId])),
    [base, after, medicineId],
  );
  const medicines = useMemo(
    () =>
      base.medicines
        .map(({ id, name }) => [id, name] as const)
        .toSorted((a, b) => (a[1].toLowerCase() < b[1].toLowerCase() ? -1 : 1)),
    [base],
  );
  const medicine = base.medicines.find(({ id }) => id === medicineId);
  const faults = read.ok ? [] : read.error;
  const isSameVersion = edit.version.trim() === base.version || edit.version.trim() === "";
  return (
    <>
      <h2>{said.base(label)}</h2>
      <p class="note note--warn">{words.unsigned}</p>
      <p class="soft">
        {said.editIntro} {said.leave}
      </p>
      <div class="narrow">
        <SelectLine label={said.medicine} value={medicineId} options={medicines} onChoose={setMedicine} />
      </div>
      {medicine !== undefined && (
        <EditMedicine key={medicine.id} medicine={medicine} edit={edit} faults={faults} send={send} />
      )}
      <section class="stack" aria-labelledby="effect">
        <h2 id="effect">{said.effectTitle}</h2>
        <p class="soft">{said.effectIntro}</p>
        {effect === undefined ? <p>{said.effectWaits}</p> : <EffectTable rows={effect} />}
      </section>
      <section class="stack" aria-labelledby="changes">
        <h2 id="changes">{said.changes}</h2>
        <div role="status">{isChecking && said.checking}</div>
        {faults.length > 0 && (
          <div class="note note--warn">
            <p>
              <b>{said.faults}</b>
            </p>
            <ul class="faults">
              {faults.slice(0, 12).map(({ place, message }) => (
                <li key={`${place}${message}`}>
                  <FormularyText>
                    {place}: {message}
                  </FormularyText>
                </li>
              ))}
              {faults.length > 12 && <li>{words.more(faults.length - 12)}</li>}
            </ul>
          </div>
        )}
        {!hasChanges && <p>{said.noChanges}</p>}
        <ul class="faults differences">
          {changes.map((sentence) => (
            <li key={sentence}>
              <FormularyText>{sentence}</FormularyText>
            </li>
          ))}
        </ul>
        {hasChanges && (
          <div>
            <SureButton
              label={said.undoAll}
              ask={said.undoAsk}
              yes={said.undoYes}
              onSure={() => send({ type: "dropped" })}
            />
          </div>
        )}
      </section>
      <section class="stack narrow" aria-labelledby="store">
        <h2 id="store">{said.store}</h2>
        <p class="soft">{said.storeIntro}</p>
        <TextField
          label={said.version}
          value={edit.version}
          hint={said.versionHint}
          maxLength={60}
          fault={hasChanges && isSameVersion ? said.sameVersion : undefined}
          onType={(text) => send({ type: "version-typed", text })}
        />
        {!hasChanges ? (
          <p>{said.nothingToStore}</p>
        ) : (
          <KeepDraft
            kind="formulary"
            label={`${base.title}, ${edit.version.trim()}`.slice(0, 80)}
            button={documents.store}
            isReady={after !== undefined && !isChecking && !isSameVersion}
            content={() => after && writeFormulary(after)}
          />
        )}
      </section>
    </>
  );
}
