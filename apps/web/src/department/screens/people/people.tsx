import {
  type InviteAnswer,
  inviteAnswerSchema,
  type PersonRole,
  peopleAnswerSchema,
} from "@steelyard/records/department";
import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { Answer } from "../../components/answer.tsx";
import { ProblemNote } from "../../components/problem-note.tsx";
import { RoleChoice } from "../../components/role-choice.tsx";
import { TextField } from "../../components/text-field.tsx";
import { words } from "../../messages/index.ts";
import { useAct, useAnswer, useDepartment } from "../../state/department-context.ts";
import { missingFault } from "../account/account-faults.ts";
import { InvitationCode } from "./invitation-code.tsx";
import { PersonItem } from "./person-item.tsx";

/** Who may come in, and as what. */
export function People(): VNode {
  const { people: said } = words;
  const { send } = useDepartment();
  const answer = useAnswer({ path: "people", schema: peopleAnswerSchema });
  const [code, setCode] = useState<(InviteAnswer & { readonly name: string }) | undefined>(undefined);
  const [done, setDone] = useState("");
  const changed = (): void => send({ type: "changed", paths: ["people"] });
  return (
    <div class="stack sides">
      <div class="stack">
        <p class="soft">{said.intro}</p>
        <Invite
          onInvited={(invited) => {
            setCode(invited);
            changed();
          }}
        />
        {code !== undefined && <InvitationCode {...code} onHide={() => setCode(undefined)} />}
      </div>
      <section class="stack" aria-labelledby="everybody">
        <h2 id="everybody">{said.listTitle}</h2>
        <p role="status">{done}</p>
        <Answer answer={answer}>
          {({ people }) =>
            people.length === 0 ? (
              <p>{said.empty}</p>
            ) : (
              <ul class="list">
                {people.map((person) => (
                  <PersonItem
                    key={person.id}
                    person={person}
                    onChanged={(sentence) => {
                      setDone(sentence);
                      changed();
                    }}
                    onCode={setCode}
                  />
                ))}
              </ul>
            )
          }
        </Answer>
      </section>
    </div>
  );
}

function Invite({
  onInvited,
}: {
  readonly onInvited: (invited: InviteAnswer & { readonly name: string }) => void;
}): VNode {
  const { people: said } = words;
  const { act, isBusy, problem } = useAct();
  const [name, setName] = useState("");
  const [roles, setRoles] = useState<readonly PersonRole[]>(["clinician"]);
  const [isTried, setTried] = useState(false);
  const submit = (): void => {
    setTried(true);
    if (missingFault(name) !== undefined || roles.length === 0) return;
    const body = { name: name.trim(), roles };
    act({ path: "invitations", body, schema: inviteAnswerSchema }, (invited) => {
      onInvited({ ...invited, name: body.name });
      setName("");
      setTried(false);
    });
  };
  return (
    <form
      class="stack"
      noValidate
      aria-labelledby="invite"
      onSubmit={(event) => {
        event.preventDefault();
        submit();
      }}
    >
      <h2 id="invite">{said.inviteTitle}</h2>
      <TextField
        label={said.fullName}
        value={name}
        hint={said.fullNameHint}
        maxLength={80}
        fault={isTried ? missingFault(name) : undefined}
        onType={setName}
      />
      <RoleChoice
        roles={roles}
        fault={isTried && roles.length === 0 ? said.noRole : undefined}
        onChoose={setRoles}
      />
      <ProblemNote problem={problem} />
      <p>
        <button class="button button--main" type="submit" aria-disabled={isBusy}>
          {said.invite}
        </button>
      </p>
    </form>
  );
}
