import {
  type AddDocumentAnswer,
  addDocumentAnswerSchema,
  type DocumentKind,
} from "@steelyard/records/department";
import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { FormularyText } from "../../../components/formulary-text/formulary-text.tsx";
import { ProblemNote } from "../../components/problem-note.tsx";
import { TextField } from "../../components/text-field.tsx";
import { words } from "../../messages/index.ts";
import { useAct, useDepartment } from "../../state/department-context.ts";
import { hashOf } from "../../state/department-screens.ts";
import { missingFault } from "../account/account-faults.ts";

interface Props {
  readonly kind: DocumentKind;
  /** What it is called unless somebody writes another name. */
  readonly label: string;
  readonly button: string;
  /** The text that is kept; undefined where there is none yet. */
  readonly content: () => string | undefined;
  /** There is something to keep, and nothing is wrong with it. */
  readonly isReady?: boolean;
}

/** Keeps a text as an unsigned draft under a name, and leads to it. */
export function KeepDraft({ kind, label, button, content, isReady = true }: Props): VNode {
  const { documents: said, formulary } = words;
  const { send } = useDepartment();
  const { act, isBusy, problem } = useAct();
  const [name, setName] = useState<string | undefined>(undefined);
  const [isTried, setTried] = useState(false);
  const [kept, setKept] = useState<AddDocumentAnswer | undefined>(undefined);
  const text = name ?? label;
  const submit = (): void => {
    setTried(true);
    const body = content();
    if (!isReady || missingFault(text) !== undefined || body === undefined) return;
    act(
      {
        path: "documents",
        body: { kind, label: text.trim(), content: body },
        schema: addDocumentAnswerSchema,
      },
      (answer) => {
        setKept(answer);
        setTried(false);
        send({ type: "changed", paths: ["documents"] });
      },
    );
  };
  return (
    <form
      class="stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        submit();
      }}
    >
      <TextField
        label={formulary.label}
        value={text}
        hint={formulary.labelHint}
        maxLength={80}
        fault={isTried ? missingFault(text) : undefined}
        onType={setName}
      />
      <ProblemNote problem={problem} />
      <p>
        <button class="button button--main" type="submit" aria-disabled={isBusy || !isReady}>
          {button}
        </button>
      </p>
      <div role="status" class="stack">
        {kept !== undefined && (
          <p>
            {said.stored} <a href={hashOf(kind, kept.sha256)}>{said.open}</a>
          </p>
        )}
        {kept !== undefined && kept.faults.length > 0 && (
          <div class="note">
            <p>{said.looks}</p>
            <ul class="faults">
              {kept.faults.slice(0, 12).map(({ place, message }) => (
                <li key={`${place}${message}`}>
                  <FormularyText>
                    {place}: {message}
                  </FormularyText>
                </li>
              ))}
              {kept.faults.length > 12 && <li>{words.more(kept.faults.length - 12)}</li>}
            </ul>
          </div>
        )}
      </div>
    </form>
  );
}
