import { passkeySignInOptionsSchema, sessionAnswerSchema } from "@steelyard/records/department";
import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { ProblemNote } from "../../components/problem-note.tsx";
import { TextField } from "../../components/text-field.tsx";
import { hasPasskeys, provePasskey } from "../../effects/passkeys.ts";
import { words } from "../../messages/index.ts";
import { useAct, useDepartment } from "../../state/department-context.ts";
import { hashOf } from "../../state/department-screens.ts";
import type { Person } from "../../state/department-state.ts";
import { missingFault } from "./account-faults.ts";
import { ToBedside } from "./away.tsx";

/** With a password or a passkey; over a screen whose session has ended, for its person. */
export function SignIn({ over }: { readonly over?: Person }): VNode {
  const { account } = words;
  const { send } = useDepartment();
  const { act, isBusy, problem } = useAct();
  const [login, setLogin] = useState(over?.login ?? "");
  const [password, setPassword] = useState("");
  const [isTried, setTried] = useState(false);
  const [hasFailed, setFailed] = useState(false);
  const submit = (): void => {
    setTried(true);
    setFailed(false);
    if (missingFault(login) !== undefined || missingFault(password) !== undefined) return;
    act(
      { path: "session", body: { login: login.trim(), password }, schema: sessionAnswerSchema },
      (session) => send({ type: "session-told", session }),
    );
  };
  const useKey = (): void => {
    setFailed(false);
    act(
      { path: "session/passkey/begin", body: {}, schema: passkeySignInOptionsSchema },
      ({ ticket, options }) => {
        void provePasskey(options).then((response) => {
          if (response === undefined) return setFailed(true);
          act(
            { path: "session/passkey", body: { ticket, response }, schema: sessionAnswerSchema },
            (session) => send({ type: "session-told", session }),
          );
        });
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
      {over === undefined ? (
        <p>{account.signInIntro}</p>
      ) : (
        <div role="alert" class="note note--warn">
          <h2>{account.overTitle}</h2>
          <p>{account.over(over.name)}</p>
        </div>
      )}
      <TextField
        label={account.login}
        value={login}
        autocomplete="username"
        maxLength={200}
        fault={isTried ? missingFault(login) : undefined}
        onType={setLogin}
      />
      <TextField
        label={account.password}
        value={password}
        type="password"
        autocomplete="current-password"
        maxLength={512}
        fault={isTried ? missingFault(password) : undefined}
        onType={setPassword}
      />
      <ProblemNote problem={problem} />
      <p role="alert" class={hasFailed ? "note note--warn" : undefined}>
        {hasFailed && account.passkeyFailed}
      </p>
      <p class="row">
        <button class="button button--main" type="submit" aria-disabled={isBusy}>
          {account.signIn}
        </button>
        {hasPasskeys() && (
          <button class="button" type="button" aria-disabled={isBusy} onClick={useKey}>
            {account.withPasskey}
          </button>
        )}
        {over === undefined && (
          <a class="chip" href={hashOf("join")}>
            {account.toJoin}
          </a>
        )}
      </p>
      {over === undefined && <ToBedside />}
    </form>
  );
}
