import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { TextField } from "../../components/text-field.tsx";
import { words } from "../../messages/index.ts";
import { useDepartment } from "../../state/department-context.ts";
import { SealedName } from "./sealed-name.tsx";

/** A name beside a case, where the site keeps them: behind its passphrase, on no print, and gone with the session. */
export function LocalLink({ caseId }: { readonly caseId: string }): VNode | null {
  const { link } = words;
  const { state, send } = useDepartment();
  const { session, passphrase } = state;
  // What is typed or opened here does not wait for anybody behind the sign-in.
  if (session.state !== "signed-in" || session.isOver) return null;
  return (
    <details class="local-link screen-only" open={passphrase !== undefined}>
      <summary>{link.title}</summary>
      <div class="stack">
        <p class="soft">{link.about}</p>
        {globalThis.crypto?.subtle === undefined ? (
          <p class="note note--warn">{link.noCrypto}</p>
        ) : passphrase === undefined ? (
          <Unlock />
        ) : (
          <>
            <SealedName key={passphrase.text} caseId={caseId} passphrase={passphrase} />
            <p>
              <button class="button" type="button" onClick={() => send({ type: "passphrase-forgotten" })}>
                {link.forget}
              </button>
            </p>
          </>
        )}
      </div>
    </details>
  );
}

function Unlock(): VNode {
  const { link } = words;
  const { send } = useDepartment();
  const [typed, setTyped] = useState("");
  const [isTried, setTried] = useState(false);
  return (
    <form
      class="stack"
      noValidate
      aria-label={link.title}
      onSubmit={(event) => {
        event.preventDefault();
        setTried(true);
        if (typed !== "") send({ type: "passphrase-typed", text: typed });
      }}
    >
      <TextField
        label={link.passphrase}
        value={typed}
        type="password"
        maxLength={200}
        hint={link.passphraseHint}
        fault={isTried && typed === "" ? link.missing : undefined}
        onType={setTyped}
      />
      <p>
        <button class="button" type="submit">
          {link.unlock}
        </button>
      </p>
    </form>
  );
}
