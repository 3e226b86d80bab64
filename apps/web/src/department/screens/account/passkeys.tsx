import { passkeyOptionsSchema, passkeysAnswerSchema, removedSchema } from "@steelyard/records/department";
import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { object, string } from "valibot";
import { writeDay } from "../../../components/case-log/clock.ts";
import { Answer } from "../../components/answer.tsx";
import { ProblemNote } from "../../components/problem-note.tsx";
import { SureButton } from "../../components/sure-button.tsx";
import { TextField } from "../../components/text-field.tsx";
import { hasPasskeys, makePasskey } from "../../effects/passkeys.ts";
import { words } from "../../messages/index.ts";
import { useAct, useAnswer, useDepartment } from "../../state/department-context.ts";
import { missingFault } from "./account-faults.ts";

const addedSchema = object({ id: string() });

/** The passkeys of the person: those there are, one more, one less. */
export function Passkeys(): VNode {
  const { account } = words;
  const { send } = useDepartment();
  const answer = useAnswer({ path: "passkeys", schema: passkeysAnswerSchema });
  const { act, isBusy, problem } = useAct();
  const [name, setName] = useState("");
  const [isTried, setTried] = useState(false);
  const [said, setSaid] = useState("");
  const changed = (): void => send({ type: "changed", paths: ["passkeys"] });
  const add = (): void => {
    setTried(true);
    setSaid("");
    if (missingFault(name) !== undefined) return;
    act({ path: "passkeys/begin", body: {}, schema: passkeyOptionsSchema }, ({ options }) => {
      void makePasskey(options).then((response) => {
        if (response === undefined) return setSaid(account.passkeyFailed);
        act({ path: "passkeys", body: { name: name.trim(), response }, schema: addedSchema }, () => {
          setSaid(account.added(name.trim()));
          setName("");
          setTried(false);
          changed();
        });
      });
    });
  };
  return (
    <section class="stack" aria-labelledby="passkeys">
      <h2 id="passkeys">{account.passkeysTitle}</h2>
      <p class="soft">{account.passkeysIntro}</p>
      <Answer answer={answer}>
        {({ passkeys }) =>
          passkeys.length === 0 ? (
            <p>{account.noPasskeys}</p>
          ) : (
            <ul class="list">
              {passkeys.map(({ id, name: called, at, lastUsedAt }) => (
                <li key={id}>
                  <b>{called}</b>
                  <span class="soft">
                    {account.made(writeDay(at))},{" "}
                    {lastUsedAt === undefined ? account.neverUsed : account.lastUsed(writeDay(lastUsedAt))}
                  </span>
                  <SureButton
                    label={account.remove(called)}
                    ask={account.removeAsk}
                    yes={account.removeYes}
                    isBusy={isBusy}
                    onSure={() =>
                      act({ path: "passkeys/remove", body: { id }, schema: removedSchema }, changed)
                    }
                  />
                </li>
              ))}
            </ul>
          )
        }
      </Answer>
      {hasPasskeys() ? (
        <form
          class="stack"
          noValidate
          onSubmit={(event) => {
            event.preventDefault();
            add();
          }}
        >
          <TextField
            label={account.passkeyName}
            value={name}
            hint={account.passkeyNameHint}
            maxLength={80}
            fault={isTried ? missingFault(name) : undefined}
            onType={setName}
          />
          <p>
            <button class="button" type="submit" aria-disabled={isBusy}>
              {account.addPasskey}
            </button>
          </p>
        </form>
      ) : (
        <p class="soft">{account.passkeysUnsupported}</p>
      )}
      <ProblemNote problem={problem} />
      <p role="status">{said}</p>
    </section>
  );
}
