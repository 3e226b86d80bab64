import { linkAnswerSchema, openLink, sealLink } from "@steelyard/records/department";
import type { VNode } from "preact";
import { useEffect, useState } from "preact/hooks";
import { addressOf } from "../../api/ask.ts";
import { Answer } from "../../components/answer.tsx";
import { ProblemNote } from "../../components/problem-note.tsx";
import { SureButton } from "../../components/sure-button.tsx";
import { TextField } from "../../components/text-field.tsx";
import { words } from "../../messages/index.ts";
import { useAct, useAnswer, useDepartment } from "../../state/department-context.ts";
import type { Passphrase } from "../../state/department-state.ts";

interface Props {
  readonly caseId: string;
  readonly passphrase: Passphrase;
}

const random = (length: number): Uint8Array<ArrayBuffer> => crypto.getRandomValues(new Uint8Array(length));

/** The name as the passphrase opens it, and the ways to keep another one or none; asked for only once there is a passphrase. */
export function SealedName({ caseId, passphrase }: Props): VNode {
  const { link } = words;
  const { send } = useDepartment();
  const { act, isBusy, problem } = useAct();
  const [said, setSaid] = useState("");
  const asked = { path: "case/link", query: { caseId }, schema: linkAnswerSchema };
  const answer = useAnswer(asked);
  const keep = (sealed: string | null, saying: string, done?: () => void): void => {
    setSaid("");
    act({ path: "case/link", body: { caseId, sealed }, schema: linkAnswerSchema }, (value) => {
      // Not read again: each reading stands in the audit log.
      send({ type: "answered", address: addressOf(asked), value });
      setSaid(saying);
      done?.();
    });
  };
  const sealAndKeep = (text: string, done: () => void): void => {
    void sealLink(text, { caseId, passphrase: passphrase.text, random }).then((sealed) =>
      keep(sealed, link.kept, done),
    );
  };
  return (
    <div class="stack">
      <Answer answer={answer}>
        {({ sealed }) => (
          <>
            {sealed === undefined ? (
              <>
                <p>{link.none}</p>
                <SealForm passphrase={passphrase} isBusy={isBusy} onSeal={sealAndKeep} />
              </>
            ) : (
              <Opened key={sealed} sealed={sealed} caseId={caseId} passphrase={passphrase}>
                <SealForm isReplacing passphrase={passphrase} isBusy={isBusy} onSeal={sealAndKeep} />
              </Opened>
            )}
            {sealed !== undefined && (
              <SureButton
                label={link.remove}
                ask={link.removeAsk}
                yes={link.removeYes}
                isBusy={isBusy}
                onSure={() => keep(null, link.removed)}
              />
            )}
          </>
        )}
      </Answer>
      <ProblemNote problem={problem} />
      <p role="status">{said}</p>
    </div>
  );
}

interface OpenedProps extends Props {
  readonly sealed: string;
  /** What may be done with a name that has opened: one that stays shut is not replaced unseen. */
  readonly children: VNode;
}

function Opened({ sealed, caseId, passphrase, children }: OpenedProps): VNode {
  const { link } = words;
  const { send } = useDepartment();
  const [opened, setOpened] = useState<Awaited<ReturnType<typeof openLink>> | undefined>(undefined);
  useEffect(() => {
    let isWanted = true;
    void openLink(sealed, { caseId, passphrase: passphrase.text }).then((result) => {
      if (!isWanted) return;
      setOpened(result);
      if (result.ok) send({ type: "passphrase-proven" });
    });
    return () => {
      isWanted = false;
    };
  }, [sealed, caseId, passphrase.text]);
  if (opened === undefined) return <p role="status">{link.opening}</p>;
  if (!opened.ok)
    return (
      <p role="alert" class="note note--warn">
        {link.wrong}
      </p>
    );
  return (
    <>
      <p class="local-link__name">{opened.value}</p>
      {children}
    </>
  );
}

interface SealFormProps {
  readonly isReplacing?: boolean;
  readonly passphrase: Passphrase;
  readonly isBusy: boolean;
  readonly onSeal: (text: string, done: () => void) => void;
}

const nothing = { text: "", again: "" };
/** Fewest characters of a passphrase that seals a first name here. */
const shortestPassphrase = 12;

function SealForm({ isReplacing = false, passphrase, isBusy, onSeal }: SealFormProps): VNode {
  const { link } = words;
  const [form, setForm] = useState(nothing);
  const [isTried, setTried] = useState(false);
  const text = form.text.trim();
  const textFault = text === "" ? link.missing : undefined;
  const againFault = passphrase.isProven ? undefined : faultOfAgain(form.again, passphrase.text);
  return (
    <form
      class="stack"
      noValidate
      aria-label={link.field}
      onSubmit={(event) => {
        event.preventDefault();
        setTried(true);
        if (isBusy || textFault !== undefined || againFault !== undefined) return;
        onSeal(text, () => {
          setForm(nothing);
          setTried(false);
        });
      }}
    >
      <TextField
        label={link.field}
        value={form.text}
        maxLength={200}
        hint={link.fieldHint}
        fault={isTried ? textFault : undefined}
        onType={(typed) => setForm({ ...form, text: typed })}
      />
      {!passphrase.isProven && (
        <TextField
          label={link.again}
          value={form.again}
          type="password"
          maxLength={200}
          hint={link.againHint}
          fault={isTried ? againFault : undefined}
          onType={(again) => setForm({ ...form, again })}
        />
      )}
      <p>
        <button class="button" type="submit" aria-disabled={isBusy}>
          {isReplacing ? link.replace : link.seal}
        </button>
      </p>
    </form>
  );
}

function faultOfAgain(again: string, passphrase: string): string | undefined {
  if (again !== passphrase) return words.link.differs;
  return [...passphrase].length < shortestPassphrase ? words.link.short : undefined;
}
