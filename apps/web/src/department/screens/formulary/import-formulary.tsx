import type { Formulary } from "@steelyard/core/dosing";
import { validateFormulary } from "@steelyard/formulary";
import { readFormularyText } from "@steelyard/formulary/ownership";
import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { FileChoice } from "../../../components/file-choice/file-choice.tsx";
import { words } from "../../messages/index.ts";
import { KeepDraft } from "../documents/keep-draft.tsx";

/** A formulary from a file: checked here, every fault with its place, and kept as a draft. */
export function ImportFormulary(): VNode {
  const { formulary: said } = words;
  const [taken, setTaken] = useState<{ file: string; text: string; formulary: Formulary } | undefined>(
    undefined,
  );
  const [refused, setRefused] = useState<readonly string[]>([]);
  const take = (file: string, text: string): void => {
    const data = readFormularyText(text);
    const read = data.ok ? validateFormulary(data.value) : data;
    if (read.ok) {
      setRefused([]);
      setTaken({ file, text, formulary: read.value });
      return;
    }
    const shown = read.error.slice(0, 12).map(({ place, message }) => `${place}: ${message}`);
    const more = read.error.length > 12 ? [words.more(read.error.length - 12)] : [];
    setRefused([said.notTaken(file), ...shown, ...more]);
  };
  return (
    <section class="stack" aria-labelledby="import">
      <h2 id="import">{said.importTitle}</h2>
      <FileChoice
        label={said.importLabel}
        hint={said.importHint}
        taken={taken && { takeOff: said.takeOff(taken.file) }}
        refused={refused}
        onText={take}
        onTakeOff={() => setTaken(undefined)}
      />
      {taken !== undefined && (
        <>
          <p role="status">{said.importReady(taken.file, taken.formulary.medicines.length)}</p>
          <KeepDraft
            kind="formulary"
            label={`${taken.formulary.title}, ${taken.formulary.version}`.slice(0, 80)}
            button={said.keepImport}
            content={() => taken.text}
          />
        </>
      )}
    </section>
  );
}
