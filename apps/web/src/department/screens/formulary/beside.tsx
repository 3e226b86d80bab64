import type { Formulary } from "@steelyard/core/dosing";
import { compareFormularies, describeDifference } from "@steelyard/formulary/ownership";
import type { VNode } from "preact";
import { useMemo } from "preact/hooks";
import { FormularyText } from "../../../components/formulary-text/formulary-text.tsx";
import { EffectTable } from "../../components/effect-table.tsx";
import { words } from "../../messages/index.ts";
import { effectOn } from "../../state/formulary-effect.ts";
import { draftName, WithFormulary } from "./with-formulary.tsx";

interface Props {
  readonly formulary: Formulary;
  readonly own: string;
  /** The version it is held against. */
  readonly other: string;
}

/** What a version changes beside the one in force, or beside the software's own draft while there is none. */
export function Beside({ formulary, own, other }: Props): VNode | null {
  if (own === other) return null;
  return (
    <section class="stack" aria-labelledby="beside">
      <h2 id="beside">{other === draftName ? words.formulary.againstDraft : words.formulary.against}</h2>
      <WithFormulary sha256={other}>
        {({ formulary: before }) => <Differences before={before} after={formulary} />}
      </WithFormulary>
    </section>
  );
}

/** Two formularies: every difference in a sentence, and what it does to example children. */
export function Differences({
  before,
  after,
}: {
  readonly before: Formulary;
  readonly after: Formulary;
}): VNode {
  const { formulary } = words;
  const sentences = useMemo(() => compareFormularies(before, after).map(describeDifference), [before, after]);
  const rows = useMemo(() => effectOn(before, after), [before, after]);
  if (sentences.length === 0) return <p>{formulary.same}</p>;
  return (
    <>
      <p>{formulary.differences(sentences.length)}</p>
      <ul class="faults differences">
        {sentences.map((sentence) => (
          <li key={sentence}>
            <FormularyText>{sentence}</FormularyText>
          </li>
        ))}
      </ul>
      <h3>{formulary.effectTitle}</h3>
      <p class="soft">{formulary.effectIntro}</p>
      <EffectTable rows={rows} onlyChanges />
    </>
  );
}
