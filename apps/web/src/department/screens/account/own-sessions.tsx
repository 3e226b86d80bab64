import { endedSessionsSchema, type SessionEntry, sessionsAnswerSchema } from "@steelyard/records/department";
import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { Answer } from "../../components/answer.tsx";
import { ProblemNote } from "../../components/problem-note.tsx";
import { TextField } from "../../components/text-field.tsx";
import { writeTime } from "../../components/write-time.ts";
import { words } from "../../messages/index.ts";
import { useAct, useAnswer, useDepartment } from "../../state/department-context.ts";
import { missingFault } from "./account-faults.ts";

/** Where the person is signed in, and the way to end what is open elsewhere. */
export function OwnSessions(): VNode {
  const { account } = words;
  const answer = useAnswer({ path: "sessions", schema: sessionsAnswerSchema });
  return (
    <section class="stack" aria-labelledby="sessions">
      <h2 id="sessions">{account.sessionsTitle}</h2>
      <p class="soft">{account.sessionsIntro}</p>
      <Answer answer={answer}>{({ sessions }) => <SessionList sessions={sessions} />}</Answer>
    </section>
  );
}

function SessionList({ sessions }: { readonly sessions: readonly SessionEntry[] }): VNode {
  const { account } = words;
  const { send } = useDepartment();
  const { act, isBusy, problem } = useAct();
  const [password, setPassword] = useState("");
  const [isTried, setTried] = useState(false);
  const [said, setSaid] = useState("");
  const others = sessions.filter(({ isThis }) => !isThis);
  const end = (id?: string): void => {
    setTried(true);
    setSaid("");
    if (missingFault(password) !== undefined) return;
    const body = { password, ...(id !== undefined && { id }) };
    act({ path: "sessions/end", body, schema: endedSessionsSchema }, ({ ended }) => {
      setPassword("");
      setTried(false);
      setSaid(account.ended(ended));
      send({ type: "changed", paths: ["sessions"] });
    });
  };
  return (
    <form
      class="stack"
      noValidate
      aria-labelledby="sessions"
      onSubmit={(event) => {
        event.preventDefault();
        end();
      }}
    >
      <ul class="list">
        {sessions.map(({ id, startedAt, usedAt, isThis }) => (
          <li key={id}>
            <b>{account.began(writeTime(startedAt))}</b>
            <span class="soft">{isThis ? account.thisOne : account.usedLast(writeTime(usedAt))}</span>
            {!isThis && (
              <button
                class="button"
                type="button"
                aria-label={account.endOne(writeTime(startedAt))}
                aria-disabled={isBusy}
                onClick={() => end(id)}
              >
                {account.end}
              </button>
            )}
          </li>
        ))}
      </ul>
      {others.length === 0 ? (
        <p>{account.noOthers}</p>
      ) : (
        <>
          <TextField
            label={account.endPassword}
            value={password}
            type="password"
            autocomplete="current-password"
            maxLength={512}
            fault={isTried ? missingFault(password) : undefined}
            onType={setPassword}
          />
          <p>
            <button class="button" type="submit" aria-disabled={isBusy}>
              {account.endOthers}
            </button>
          </p>
        </>
      )}
      <ProblemNote problem={problem} />
      <p role="status">{said}</p>
    </form>
  );
}
