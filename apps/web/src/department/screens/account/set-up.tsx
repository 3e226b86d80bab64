import { sessionAnswerSchema } from "@steelyard/records/department";
import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { ProblemNote } from "../../components/problem-note.tsx";
import { TextField } from "../../components/text-field.tsx";
import { words } from "../../messages/index.ts";
import { useAct, useDepartment } from "../../state/department-context.ts";
import { loginFault, missingFault, passwordFault } from "./account-faults.ts";
import { NewPassword } from "./new-password.tsx";

/** Nobody exists yet: the code from the console makes the first administrator. */
export function SetUp(): VNode {
  const { account } = words;
  const { send } = useDepartment();
  const { act, isBusy, problem } = useAct();
  const [form, setForm] = useState({ code: "", name: "", login: "", password: "", again: "" });
  const [isTried, setTried] = useState(false);
  const type = (change: Partial<typeof form>): void => setForm((before) => ({ ...before, ...change }));
  const { again, ...request } = form;
  const told = <T,>(fault: T): T | undefined => (isTried ? fault : undefined);
  const submit = (): void => {
    setTried(true);
    const isWrong =
      missingFault(form.code) ??
      missingFault(form.name) ??
      loginFault(form.login) ??
      passwordFault(form.password) ??
      (again !== form.password || undefined);
    if (isWrong !== undefined) return;
    const body = { ...request, code: form.code.trim(), name: form.name.trim() };
    act({ path: "set-up", body, schema: sessionAnswerSchema }, (session) =>
      send({ type: "session-told", session }),
    );
  };
  return (
    <form
      class="stack narrow"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        submit();
      }}
    >
      <p>{account.setUpIntro}</p>
      <TextField
        label={account.setUpCode}
        value={form.code}
        hint={account.setUpHint}
        fault={told(missingFault(form.code))}
        onType={(code) => type({ code })}
      />
      <TextField
        label={account.fullName}
        value={form.name}
        autocomplete="name"
        maxLength={80}
        hint={account.fullNameHint}
        fault={told(missingFault(form.name))}
        onType={(name) => type({ name })}
      />
      <TextField
        label={account.login}
        value={form.login}
        autocomplete="username"
        maxLength={64}
        hint={account.loginHint}
        fault={told(loginFault(form.login))}
        onType={(login) => type({ login })}
      />
      <NewPassword
        label={account.password}
        password={form.password}
        again={again}
        isTried={isTried}
        onType={type}
      />
      <ProblemNote problem={problem} />
      <p>
        <button class="button button--main" type="submit" aria-disabled={isBusy}>
          {account.setUp}
        </button>
      </p>
    </form>
  );
}
