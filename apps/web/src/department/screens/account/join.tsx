import { sessionAnswerSchema } from "@steelyard/records/department";
import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { ProblemNote } from "../../components/problem-note.tsx";
import { TextField } from "../../components/text-field.tsx";
import { words } from "../../messages/index.ts";
import { useAct, useDepartment } from "../../state/department-context.ts";
import { loginFault, missingFault, passwordFault } from "./account-faults.ts";
import { ToBedside } from "./away.tsx";
import { NewPassword } from "./new-password.tsx";

/** Whoever holds an invitation chooses a login and a password. */
export function Join(): VNode {
  const { account } = words;
  const { send } = useDepartment();
  const { act, isBusy, problem } = useAct();
  const [form, setForm] = useState({ code: "", login: "", password: "", again: "" });
  const [isTried, setTried] = useState(false);
  const type = (change: Partial<typeof form>): void => setForm((before) => ({ ...before, ...change }));
  const { again, ...request } = form;
  const submit = (): void => {
    setTried(true);
    const isWrong =
      missingFault(form.code) ??
      loginFault(form.login) ??
      passwordFault(form.password) ??
      (again !== form.password || undefined);
    if (isWrong !== undefined) return;
    act(
      { path: "join", body: { ...request, code: form.code.trim() }, schema: sessionAnswerSchema },
      (session) => {
        // The code in the address is used up, and so is the way in.
        location.hash = "";
        send({ type: "session-told", session });
      },
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
      <p>{account.joinIntro}</p>
      <TextField
        label={account.joinCode}
        value={form.code}
        maxLength={64}
        fault={isTried ? missingFault(form.code) : undefined}
        onType={(code) => type({ code })}
      />
      <TextField
        label={account.login}
        value={form.login}
        autocomplete="username"
        maxLength={64}
        hint={account.loginHint}
        fault={isTried ? loginFault(form.login) : undefined}
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
      <p class="row">
        <button class="button button--main" type="submit" aria-disabled={isBusy}>
          {account.join}
        </button>
        <a class="chip" href="#/">
          {account.toSignIn}
        </a>
      </p>
      <ToBedside />
    </form>
  );
}
