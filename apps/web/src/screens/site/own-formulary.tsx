import type { VNode } from "preact";
import { useId, useState } from "preact/hooks";
import { FileChoice } from "../../components/file-choice/file-choice.tsx";
import { offerRules } from "../../effects/site-rules/site-rules.ts";
import type { ScreenProps } from "../../frame/screen-props.ts";
import { siteMessages } from "../../messages/site.ts";
import { formularyIndex } from "../../state/formulary-index.ts";
import { FormularyFacts } from "./formulary-facts.tsx";
import { takeFormulary } from "./take-formulary.ts";

type Said =
  | { readonly type: "nothing" | "checking" | "taken-off" }
  | { readonly type: "taken"; readonly version: string; readonly isKept: boolean };

type Props = Pick<ScreenProps, "formulary" | "next"> & {
  /** The department's server says which one is in use; a file would not last. */
  readonly isOfDepartment: boolean;
};

/** The formulary of the site: taken from its file, shown with who answers for it, and taken off again. */
export function OwnFormulary({ formulary, next, isOfDepartment }: Props): VNode {
  const words = siteMessages.formulary;
  const [refused, setRefused] = useState<readonly string[]>([]);
  const [said, setSaid] = useState<Said>({ type: "nothing" });
  const id = useId();
  const waiting = next?.formulary;
  const own = (waiting ?? formulary)?.own;
  const take = (file: string, text: string): void => {
    setSaid({ type: "checking" });
    setRefused([]);
    // The word is on the screen before the checks take the processor.
    setTimeout(() => {
      void takeFormulary(file, text).then((taken) => {
        setRefused(taken.ok ? [] : taken.error);
        setSaid(taken.ok ? { type: "taken", ...taken.value } : { type: "nothing" });
      });
    });
  };
  const takeOff = (): void => {
    setRefused([]);
    void offerRules({ formulary: null }).then(() => setSaid({ type: "taken-off" }));
  };
  return (
    <section class="site__part" aria-labelledby={`${id}-title`}>
      <h2 id={`${id}-title`}>{words.title}</h2>
      <p>{words.intro}</p>
      {!isOfDepartment && (
        <FileChoice
          label={words.file}
          hint={words.hint}
          taken={undefined}
          refused={refused}
          onText={take}
          onTakeOff={takeOff}
        />
      )}
      <p role="status">{sentenceOf(said, waiting !== undefined)}</p>
      {waiting !== undefined && (said.type === "nothing" || said.type === "checking") && (
        <p class="site__waits">
          {waiting.own === undefined ? words.draftWaits : words.waits(waiting.index.version)}
        </p>
      )}
      {own === undefined ? (
        waiting === undefined && <p>{words.draft(formularyIndex.version)}</p>
      ) : (
        <FormularyFacts own={own} />
      )}
      {formulary?.lost !== undefined && waiting === undefined && (
        <button class="button" type="button" onClick={takeOff}>
          {words.leaveLost}
        </button>
      )}
      {own !== undefined && !isOfDepartment && (
        <button class="button" type="button" onClick={takeOff}>
          {words.takeOff(own.formulary.version)}
        </button>
      )}
    </section>
  );
}

function sentenceOf(said: Said, isWaiting: boolean): string {
  const words = siteMessages.formulary;
  switch (said.type) {
    case "nothing":
      return "";
    case "checking":
      return words.checking;
    case "taken-off":
      return isWaiting ? words.takenOffNext : words.takenOff;
    case "taken": {
      const taken = isWaiting ? words.keptNext(said.version) : words.kept(said.version);
      return said.isKept ? taken : `${taken} ${words.notKept}`;
    }
  }
}
