import {
  type ChangePersonRequest,
  changePersonAnswerSchema,
  type InviteAnswer,
  type PersonEntry,
} from "@steelyard/records/department";
import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { ProblemNote } from "../../components/problem-note.tsx";
import { RoleChoice } from "../../components/role-choice.tsx";
import { SureButton } from "../../components/sure-button.tsx";
import { writeTime } from "../../components/write-time.ts";
import { words } from "../../messages/index.ts";
import { useAct } from "../../state/department-context.ts";

interface Props {
  readonly person: PersonEntry;
  readonly onChanged: (sentence: string) => void;
  readonly onCode: (code: InviteAnswer & { readonly name: string }) => void;
}

/** One person: how they stand here, and what an administrator may change. */
export function PersonItem({ person, onChanged, onCode }: Props): VNode {
  const { people: said } = words;
  const { id, name, login, state } = person;
  const { act, isBusy, problem } = useAct();
  const [isOpen, setOpen] = useState(false);
  const [roles, setRoles] = useState(person.roles);
  const change = (body: Omit<ChangePersonRequest, "id">, sentence: string): void =>
    act({ path: "people/change", body: { id, ...body }, schema: changePersonAnswerSchema }, (answer) => {
      onChanged(sentence);
      const { code, expiresAt } = answer;
      if (code !== undefined && expiresAt !== undefined) onCode({ name, code, expiresAt });
    });
  return (
    <li data-person={login ?? name}>
      <b>{name}</b>
      <span class="soft">
        {[
          login,
          person.roles.map((role) => words.roles[role]).join(", "),
          state === "invited"
            ? undefined
            : person.lastSignInAt === undefined
              ? said.noSignIn
              : said.lastSignIn(writeTime(person.lastSignInAt)),
          state === "invited" ? undefined : said.passkeys(person.passkeys),
        ]
          .filter((part) => part !== undefined)
          .join(" · ")}
      </span>
      <span class={`tag${state === "active" ? "" : " tag--warn"}`}>{said.states[state]}</span>
      <p class="row">
        <button class="button" type="button" aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
          {said.change(name)}
        </button>
        {state === "locked" && (
          <button
            class="button"
            type="button"
            aria-disabled={isBusy}
            onClick={() => change({ unlock: true }, said.unlocked(name))}
          >
            {said.unlock}
          </button>
        )}
      </p>
      {isOpen && (
        <div class="stack list__more">
          {state !== "removed" && (
            <>
              <RoleChoice
                roles={roles}
                fault={roles.length === 0 ? said.noRole : undefined}
                onChoose={setRoles}
              />
              <p class="row">
                <button
                  class="button"
                  type="button"
                  aria-disabled={isBusy || roles.length === 0}
                  onClick={() => roles.length > 0 && change({ roles }, said.rolesKept(name))}
                >
                  {said.saveRoles}
                </button>
                <button
                  class="button"
                  type="button"
                  aria-disabled={isBusy}
                  onClick={() => change({ newInvitation: true }, "")}
                >
                  {said.newCode}
                </button>
              </p>
              <div>
                <SureButton
                  label={said.removePerson}
                  ask={said.removeAsk(name)}
                  yes={said.removeYes}
                  isBusy={isBusy}
                  onSure={() => change({ state: "removed" }, said.removedNow(name))}
                />
              </div>
            </>
          )}
          {state === "removed" && (
            <p>
              <button
                class="button"
                type="button"
                aria-disabled={isBusy}
                onClick={() => change({ state: "active" }, said.broughtBack(name))}
              >
                {said.bringBack}
              </button>
            </p>
          )}
        </div>
      )}
      <ProblemNote problem={problem} />
    </li>
  );
}
