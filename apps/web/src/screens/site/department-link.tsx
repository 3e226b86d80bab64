import type { VNode } from "preact";
import { useId, useState } from "preact/hooks";
import { useDepartment } from "../../effects/case-desk/use-department.ts";
import { siteMessages } from "../../messages/site.ts";
import { documentKinds } from "../../state/department.ts";

/** As `steelyard device add` prints them. */
const tokens = /^[A-Za-z0-9_-]{32,200}$/;

/** Whether this device sends its cases to the server of the department, and how that stands. */
export function DepartmentLink(): VNode {
  const { department, state } = useDepartment();
  const [text, setText] = useState("");
  const [isWrong, setWrong] = useState(false);
  const id = useId();
  const words = siteMessages.department;
  const { link, waiting, refused, trouble, reachedAt, holds, refusedDocuments } = state;
  return (
    <section class="site__department" aria-labelledby={`${id}-title`}>
      <h2 id={`${id}-title`}>{words.title}</h2>
      <p>{words.intro}</p>
      <p>
        <a href="/department">{words.page}</a>
      </p>
      {link === "off" ? (
        <form
          onSubmit={(event) => {
            event.preventDefault();
            const token = text.trim();
            setWrong(!tokens.test(token));
            if (!tokens.test(token)) return;
            setText("");
            department.link(token);
          }}
        >
          <label for={id}>{words.token}</label>
          <input
            id={id}
            type="text"
            value={text}
            autocomplete="off"
            autocapitalize="none"
            spellcheck={false}
            aria-describedby={isWrong ? `${id}-wrong` : undefined}
            onInput={({ currentTarget }) => setText(currentTarget.value)}
          />
          <button class="button" type="submit">
            {words.link}
          </button>
          {isWrong && (
            <p id={`${id}-wrong`} role="alert" class="site__unsigned">
              {words.noToken}
            </p>
          )}
        </form>
      ) : (
        <>
          <p role="status">
            {trouble !== undefined
              ? words.trouble[trouble]
              : reachedAt === undefined
                ? words.asking
                : words.reached}{" "}
            {words.waiting(waiting)}
          </p>
          {refused.length > 0 && (
            <div class="site__unsigned">
              <p>{words.refused(refused.length)}</p>
              <ul>
                {[...new Set(refused)].map((reason) => (
                  <li key={reason}>{words.reasons[reason]}</li>
                ))}
              </ul>
            </div>
          )}
          {documentKinds.some((kind) => holds[kind] !== undefined) && (
            <p>
              {documentKinds
                .flatMap((kind) => (holds[kind] === undefined ? [] : [words.holds[kind]]))
                .join(" ")}
            </p>
          )}
          {refusedDocuments.map(({ kind, why }) => (
            <p key={kind} role="alert" class="site__unsigned">
              {words.refusedDocument[kind]} {words.notVerified[why]}
            </p>
          ))}
          {documentKinds.every((kind) => holds[kind] === undefined) ? (
            <button class="button" type="button" onClick={() => void department.unlink(false)}>
              {words.unlink}
            </button>
          ) : (
            <>
              <button class="button" type="button" onClick={() => void department.unlink(false)}>
                {words.unlinkKeep}
              </button>
              <button class="button" type="button" onClick={() => void department.unlink(true)}>
                {words.unlinkDrop}
              </button>
            </>
          )}
        </>
      )}
    </section>
  );
}
