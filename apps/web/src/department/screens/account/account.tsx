import { passwordAnswerSchema } from "@steelyard/records/department";
import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { ProblemNote } from "../../components/problem-note.tsx";
import { TextField } from "../../components/text-field.tsx";
import type { ScreenProps } from "../../frame/screen-props.ts";
import { words } from "../../messages/index.ts";
import { useAct } from "../../state/department-context.ts";
import { missingFault, passwordFault } from "./account-faults.ts";
import { NewPassword } from "./new-password.tsx";
import { OwnSessions } from "./own-sessions.tsx";
import { Passkeys } from "./passkeys.tsx";

/** What belongs to the person who is signed in. */
export function Account({ person }: ScreenProps): VNode {
  const { account } = words;
  return (
    <div class="stack narrow">
      <dl class="facts">
        <div>
          <dt>{account.fullName}</dt>
          <dd>{person.name}</dd>
        </div>
        <div>
          <dt>{account.login}</dt>
          <dd>{person.login}</dd>
        </div>
        <div>
          <dt>{account.yourRoles}</dt>
          <dd>{person.roles.map((role) => words.roles[role]).join(", ")}</dd>
        </div>
      </dl>
      <ChangePassword login={person.login} />
      <Passkeys />
      <OwnSessions />
    </div>
  );
}

const noTexts = { current: "", password: "", again: "" };

function ChangePassword({ login }: { readonly login: string }): VNode {
  const { account } = words;
  const { act, isBusy, problem } = useAct();
  const [form, setForm] = useState(noTexts);
  const [isTried, setTried] = useState(false);
  const [isDone, setDone] = useState(false);
  const type = (change: Partial<typeof form>): void => {
    setDone(false);
    setForm((before) => ({ ...before, ...change }));
  };
  const submit = (): void => {
    setTried(true);
    const { current, password, again } = form;
    if (current === "" || passwordFault(password) !== undefined || again !== password) return;
    act({ path: "password", body: { current, next: password }, schema: passwordAnswerSchema }, () => {
      setForm(noTexts);
      setTried(false);
      setDone(true);
    });
  };
  return (
    <form
      class="stack"
      noValidate
      aria-labelledby="change-password"
      onSubmit={(event) => {
        event.preventDefault();
        submit();
      }}
    >
      <h2 id="change-password">{account.changePassword}</h2>
      {/* For the keeper of passwords: whose it is. */}
      <input type="hidden" name="username" autocomplete="username" value={login} />
      <TextField
        label={account.current}
        value={form.current}
        type="password"
        autocomplete="current-password"
        maxLength={512}
        fault={isTried ? missingFault(form.current) : undefined}
        onType={(current) => type({ current })}
      />
      <NewPassword
        label={account.newPassword}
        password={form.password}
        again={form.again}
        isTried={isTried}
        onType={type}
      />
      <ProblemNote problem={problem} />
      <p>
        <button class="button" type="submit" aria-disabled={isBusy}>
          {account.change}
        </button>
      </p>
      <p role="status">{isDone && account.changed}</p>
    </form>
  );
}
