import {
  devicesAnswerSchema,
  type EnrolAnswer,
  enrolAnswerSchema,
  revokedSchema,
} from "@steelyard/records/department";
import type { VNode } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { writeDay } from "../../../components/case-log/clock.ts";
import { QrCode } from "../../../components/qr-code/qr-code.tsx";
import { Answer } from "../../components/answer.tsx";
import { ProblemNote } from "../../components/problem-note.tsx";
import { SureButton } from "../../components/sure-button.tsx";
import { TextField } from "../../components/text-field.tsx";
import { words } from "../../messages/index.ts";
import { useAct, useAnswer, useDepartment } from "../../state/department-context.ts";
import { missingFault } from "../account/account-faults.ts";

/** Which devices may send cases: added with a token that is shown once, and revoked. */
export function Devices(): VNode {
  const { people: said } = words;
  const { send } = useDepartment();
  const answer = useAnswer({ path: "devices", schema: devicesAnswerSchema });
  const add = useAct();
  const revoke = useAct();
  const [name, setName] = useState("");
  const [isTried, setTried] = useState(false);
  const [made, setMade] = useState<(EnrolAnswer & { readonly name: string }) | undefined>(undefined);
  const [done, setDone] = useState("");
  const changed = (): void => send({ type: "changed", paths: ["devices"] });
  const submit = (): void => {
    setTried(true);
    if (missingFault(name) !== undefined) return;
    const body = { name: name.trim() };
    add.act({ path: "devices", body, schema: enrolAnswerSchema }, (enrolled) => {
      setMade({ ...enrolled, name: body.name });
      setName("");
      setTried(false);
      changed();
    });
  };
  return (
    <div class="stack sides">
      <div class="stack">
        <p class="soft">{said.devicesIntro}</p>
        <form
          class="stack"
          noValidate
          aria-labelledby="add-device"
          onSubmit={(event) => {
            event.preventDefault();
            submit();
          }}
        >
          <h2 id="add-device">{said.deviceTitle}</h2>
          <TextField
            label={said.deviceName}
            value={name}
            hint={said.deviceNameHint}
            maxLength={80}
            fault={isTried ? missingFault(name) : undefined}
            onType={setName}
          />
          <ProblemNote problem={add.problem} />
          <p>
            <button class="button button--main" type="submit" aria-disabled={add.isBusy}>
              {said.addDevice}
            </button>
          </p>
        </form>
        {made !== undefined && <Token {...made} onHide={() => setMade(undefined)} />}
      </div>
      <section class="stack" aria-labelledby="devices">
        <h2 id="devices">{said.devicesTitle}</h2>
        <p role="status">{done}</p>
        <ProblemNote problem={revoke.problem} />
        <Answer answer={answer}>
          {({ devices }) =>
            devices.length === 0 ? (
              <p>{said.noDevices}</p>
            ) : (
              <ul class="list">
                {devices.map(({ id, name: called, enrolledAt, revokedAt }) => (
                  <li key={id} data-device={called}>
                    <b>{called}</b>
                    <span class="soft">{said.enrolled(writeDay(enrolledAt))}</span>
                    {revokedAt !== undefined ? (
                      <span class="tag tag--warn">{said.revoked(writeDay(revokedAt))}</span>
                    ) : (
                      <SureButton
                        label={said.revoke(called)}
                        ask={said.revokeAsk}
                        yes={said.revokeYes}
                        isBusy={revoke.isBusy}
                        onSure={() =>
                          revoke.act({ path: "devices/revoke", body: { id }, schema: revokedSchema }, () => {
                            setDone(said.revokedNow(called));
                            changed();
                          })
                        }
                      />
                    )}
                  </li>
                ))}
              </ul>
            )
          }
        </Answer>
      </section>
    </div>
  );
}

interface TokenProps extends EnrolAnswer {
  readonly name: string;
  readonly onHide: () => void;
}

/** The secret of a device, as text and as a code; gone with the next screen. */
function Token({ name, token, onHide }: TokenProps): VNode {
  const { people: said } = words;
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), [token]);
  return (
    <section class="once screen-only" aria-labelledby="token">
      <h2 id="token" ref={heading} tabIndex={-1}>
        {said.tokenTitle(name)}
      </h2>
      <p>{said.tokenOnce}</p>
      <p class="once__code" data-code>
        {token}
      </p>
      <QrCode text={token} label={said.tokenCode} />
      <p>
        <button class="button" type="button" onClick={onHide}>
          {said.hide}
        </button>
      </p>
    </section>
  );
}
