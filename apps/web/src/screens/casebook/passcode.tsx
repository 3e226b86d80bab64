import type { VNode } from "preact";
import { useId, useState } from "preact/hooks";
import { cases } from "../../messages/cases.ts";
import type { CaseDesk, DeskState } from "../../state/case-desk.ts";

/** Shortest passcode, characters: what is sealed can be guessed at without end by whoever has copied it. @source nist-sp-800-63b */
const shortest = 8;

/** Asks for the passcode. */
export function Unlock({ desk }: { readonly desk: CaseDesk }): VNode {
  const words = cases.casebook;
  const id = useId();
  const [passcode, setPasscode] = useState("");
  const [said, setSaid] = useState("");
  return (
    <form
      class="passcode"
      onSubmit={(submit) => {
        submit.preventDefault();
        setSaid(words.unlocking);
        void desk.unlock(passcode).then((isOpen) => setSaid(isOpen ? "" : words.wrong));
      }}
    >
      <label>
        {words.passcode}
        <input
          type="password"
          value={passcode}
          autocomplete="current-password"
          aria-describedby={id}
          onInput={({ currentTarget }) => setPasscode(currentTarget.value)}
        />
      </label>
      <button class="button" type="submit">
        {words.unlock}
      </button>
      <p id={id} role="status">
        {said}
      </p>
    </form>
  );
}

interface Props {
  readonly desk: CaseDesk;
  readonly lock: DeskState["lock"];
}

/** Sets a passcode or takes it off, with honest words about what it is good for. */
export function Passcode({ desk, lock }: Props): VNode {
  const words = cases.casebook;
  const id = useId();
  const [first, setFirst] = useState("");
  const [again, setAgain] = useState("");
  const [said, setSaid] = useState("");
  const set = (): void => {
    if (first.length < shortest) setSaid(words.tooShort);
    else if (first !== again) setSaid(words.different);
    else {
      setSaid(words.unlocking);
      setFirst("");
      setAgain("");
      void desk.setPasscode(first).then(() => setSaid(""));
    }
  };
  return (
    <section class="passcode-section" aria-labelledby={`${id}-title`}>
      <h2 id={`${id}-title`}>{words.lockTitle}</h2>
      <p id={`${id}-words`}>{words.lockWords}</p>
      {lock === "open" ? (
        <>
          <p>{words.lockOpen}</p>
          <div class="export__buttons">
            <button class="button" type="button" onClick={desk.lockNow}>
              {words.lockNow}
            </button>
            <button class="button" type="button" onClick={() => void desk.removePasscode()}>
              {words.removePasscode}
            </button>
          </div>
        </>
      ) : (
        <form
          class="passcode"
          onSubmit={(submit) => {
            submit.preventDefault();
            set();
          }}
        >
          <label>
            {words.passcode}
            <input
              type="password"
              value={first}
              autocomplete="new-password"
              aria-describedby={`${id}-hint ${id}-said`}
              onInput={({ currentTarget }) => setFirst(currentTarget.value)}
            />
          </label>
          <label>
            {words.passcodeAgain}
            <input
              type="password"
              value={again}
              autocomplete="new-password"
              onInput={({ currentTarget }) => setAgain(currentTarget.value)}
            />
          </label>
          <button class="button" type="submit">
            {words.setPasscode}
          </button>
          <p id={`${id}-hint`}>{words.passcodeHint}</p>
          <p id={`${id}-said`} role="status">
            {said}
          </p>
        </form>
      )}
    </section>
  );
}
