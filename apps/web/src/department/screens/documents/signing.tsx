import { type DocumentEntry, documentAnswerSchema } from "@steelyard/records/department";
import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { ProblemNote } from "../../components/problem-note.tsx";
import { SureButton } from "../../components/sure-button.tsx";
import { TextField } from "../../components/text-field.tsx";
import { writeTime } from "../../components/write-time.ts";
import { words } from "../../messages/index.ts";
import { useAct, useDepartment } from "../../state/department-context.ts";
import { hasRole, type Person } from "../../state/department-state.ts";
import { missingFault } from "../account/account-faults.ts";

interface Props {
  readonly document: DocumentEntry;
  readonly person: Person;
  /** What is in force now. */
  readonly inForce: DocumentEntry | undefined;
}

/** Who has signed and who still has to; signing, publishing and going back. */
export function Signing({ document, person, inForce }: Props): VNode {
  const { documents: said } = words;
  const { needs, signatures } = document;
  return (
    <>
      <section class="stack" aria-labelledby="signatures">
        <h2 id="signatures">{said.signing}</h2>
        <p>
          {needs.because.length > 0 ? said.fourEyes(someOf(needs.because)) : said.twoEyes}{" "}
          <b>{said.needs(needs.have, needs.signatures)}</b>
        </p>
        {signatures.length === 0 ? (
          <p>{said.noSignature}</p>
        ) : (
          <ul class="list">
            {signatures.map((one) => (
              <li key={one.person.id}>
                {said.signature({
                  person: one.person.name,
                  registration: one.registration,
                  time: writeTime(one.at),
                })}
                {!one.counts && <span class="tag tag--warn">{said.countsNot}</span>}
              </li>
            ))}
          </ul>
        )}
        <SignForm document={document} person={person} />
      </section>
      <Publishing document={document} person={person} inForce={inForce} />
    </>
  );
}

/** Enough names to know what it is about. */
function someOf(names: readonly string[]): string {
  const shown = names.slice(0, 8);
  return [...shown, ...(names.length > 8 ? [words.more(names.length - 8)] : [])].join(", ");
}

function SignForm({ document, person }: Pick<Props, "document" | "person">): VNode {
  const { documents: said } = words;
  const { send } = useDepartment();
  const { act, isBusy, problem } = useAct();
  const [form, setForm] = useState({ registration: "", password: "", isSure: false });
  const [isTried, setTried] = useState(false);
  const { sha256, signatures, by, needs } = document;
  if (signatures.some((one) => one.person.id === person.id)) return <p role="status">{said.hasSigned}</p>;
  if (!hasRole(person, "reviewer")) return <p class="soft">{said.notReviewer}</p>;
  if (by.id === person.id && needs.because.length > 0) return <p class="soft">{said.ownWork}</p>;
  const submit = (): void => {
    setTried(true);
    const { registration, password, isSure } = form;
    if (missingFault(registration) ?? missingFault(password)) return;
    if (!isSure) return;
    const body = { sha256, password, registration: registration.trim() };
    act({ path: "documents/sign", body, schema: documentAnswerSchema }, () =>
      send({ type: "changed", paths: ["documents", "document"] }),
    );
  };
  return (
    <form
      class="stack narrow"
      noValidate
      aria-labelledby="sign"
      onSubmit={(event) => {
        event.preventDefault();
        submit();
      }}
    >
      <h3 id="sign">{said.signTitle}</h3>
      <label class="check">
        <input
          type="checkbox"
          checked={form.isSure}
          aria-invalid={isTried && !form.isSure}
          onChange={({ currentTarget }) => setForm({ ...form, isSure: currentTarget.checked })}
        />
        <span>{said.statement}</span>
      </label>
      {isTried && !form.isSure && (
        <p class="text-field__fault" role="alert">
          {said.statementMissing}
        </p>
      )}
      <TextField
        label={said.registration}
        value={form.registration}
        hint={said.registrationHint}
        maxLength={80}
        fault={isTried ? missingFault(form.registration) : undefined}
        onType={(registration) => setForm({ ...form, registration })}
      />
      <TextField
        label={said.password}
        value={form.password}
        type="password"
        autocomplete="current-password"
        maxLength={512}
        fault={isTried ? missingFault(form.password) : undefined}
        onType={(password) => setForm({ ...form, password })}
      />
      <ProblemNote problem={problem} />
      <p>
        <button class="button button--main" type="submit" aria-disabled={isBusy}>
          {said.sign}
        </button>
      </p>
    </form>
  );
}

function Publishing({ document, person, inForce }: Props): VNode {
  const { documents: said } = words;
  const { send } = useDepartment();
  const { act, isBusy, problem } = useAct();
  const { sha256, label, needs, published } = document;
  const before = inForce === undefined ? said.replacesNone : said.replaces(inForce.label);
  const why = document.inForce
    ? said.isInForce
    : needs.have < needs.signatures
      ? said.cannotPublish
      : hasRole(person, "reviewer", "administrator")
        ? undefined
        : said.mayNotPublish;
  return (
    <section class="stack" aria-labelledby="publishing">
      <h2 id="publishing">{said.publishTitle}</h2>
      <p class="soft">{said.publishIntro}</p>
      {why === undefined ? (
        <div>
          <SureButton
            label={published ? said.rollBack : said.publish}
            ask={published ? said.rollBackAsk(label, before) : said.publishAsk(label, before)}
            yes={published ? said.rollBackYes : said.publishYes}
            isBusy={isBusy}
            isLoud
            onSure={() =>
              act({ path: "documents/publish", body: { sha256 }, schema: documentAnswerSchema }, () =>
                send({ type: "changed", paths: ["documents", "document"] }),
              )
            }
          />
        </div>
      ) : (
        <p role="status">{why}</p>
      )}
      <ProblemNote problem={problem} />
    </section>
  );
}
