import {
  type AuditAnswer,
  type AuditEntry,
  type AuditVerifyAnswer,
  auditAnswerSchema,
  auditVerifyAnswerSchema,
} from "@steelyard/records/department";
import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { saveText } from "../../../effects/save-text.ts";
import type { ApiProblem } from "../../api/api-problem.ts";
import { Answer } from "../../components/answer.tsx";
import { ProblemNote } from "../../components/problem-note.tsx";
import { TextField } from "../../components/text-field.tsx";
import { writeTime } from "../../components/write-time.ts";
import { words } from "../../messages/index.ts";
import { useAct, useAnswer, useDepartment } from "../../state/department-context.ts";
import { auditCsv, detailOf } from "./audit-csv.ts";

const unfiltered = { action: "", actor: "" };
/** Answers that are read for one file, of 200 entries each. */
const mostPages = 100;

/** Who did what; whether the log is whole; the log as a file. */
export function Audit(): VNode {
  const { audit } = words;
  const [typed, setTyped] = useState(unfiltered);
  const [shown, setShown] = useState(unfiltered);
  const [pages, setPages] = useState<readonly number[]>([]);
  return (
    <div class="stack">
      <p class="soft">{audit.intro}</p>
      <Verify />
      <section class="stack" aria-labelledby="entries">
        <h2 id="entries">{audit.list}</h2>
        <form
          class="filters"
          noValidate
          onSubmit={(event) => {
            event.preventDefault();
            setPages([]);
            setShown({ action: typed.action.trim(), actor: typed.actor.trim() });
          }}
        >
          <TextField
            label={audit.action}
            value={typed.action}
            hint={audit.actionHint}
            onType={(action) => setTyped({ ...typed, action })}
          />
          <TextField
            label={audit.actor}
            value={typed.actor}
            hint={audit.actorHint}
            onType={(actor) => setTyped({ ...typed, actor })}
          />
          <p class="row">
            <button class="button" type="submit">
              {words.show}
            </button>
            <SaveCsv filter={shown} />
          </p>
        </form>
        <Entries filter={shown} pages={pages} onPages={setPages} />
      </section>
    </div>
  );
}

interface EntriesProps {
  readonly filter: typeof unfiltered;
  readonly pages: readonly number[];
  readonly onPages: (pages: readonly number[]) => void;
}

function Entries({ filter, pages, onPages }: EntriesProps): VNode {
  const { audit } = words;
  const before = pages.at(-1);
  const answer = useAnswer<AuditAnswer>({
    path: "audit",
    query: { ...filter, before: before?.toString(), limit: "50" },
    schema: auditAnswerSchema,
  });
  return (
    <Answer answer={answer}>
      {({ entries, next }) => (
        <>
          {entries.length === 0 ? (
            <p>{audit.none}</p>
          ) : (
            <ul class="list audit-list">
              {entries.map((entry) => (
                <li key={entry.position}>
                  <span class="row">
                    <b>{entry.action}</b>
                    <span class="soft">
                      {audit.place} {entry.position} · {writeTime(entry.at)}
                    </span>
                  </span>
                  <span>
                    {entry.actorName ?? entry.actor}
                    {entry.actorName !== undefined && <span class="soft"> {entry.actor}</span>}
                  </span>
                  <span class="soft">
                    {[entry.subject, detailOf(entry)].filter((part) => part !== "").join(" · ")}
                  </span>
                </li>
              ))}
            </ul>
          )}
          <p class="row screen-only">
            {pages.length > 0 && (
              <button class="button" type="button" onClick={() => onPages(pages.slice(0, -1))}>
                {audit.newer}
              </button>
            )}
            {next !== undefined && (
              <button class="button" type="button" onClick={() => onPages([...pages, next])}>
                {audit.older}
              </button>
            )}
          </p>
        </>
      )}
    </Answer>
  );
}

function Verify(): VNode {
  const { audit } = words;
  const { act, isBusy, problem } = useAct();
  const [found, setFound] = useState<AuditVerifyAnswer | undefined>(undefined);
  return (
    <section class="stack" aria-labelledby="verify">
      <h2 id="verify">{audit.verifyTitle}</h2>
      <p>
        <button
          class="button"
          type="button"
          aria-disabled={isBusy}
          onClick={() => act({ path: "audit/verify", body: {}, schema: auditVerifyAnswerSchema }, setFound)}
        >
          {audit.verify}
        </button>
      </p>
      <ProblemNote problem={problem} />
      <div role="status" class="stack">
        {found?.whole === true && (
          <div class="note">
            <p>
              <b>{audit.whole(found.entries)}</b>
            </p>
            <p class="soft hash">{audit.hash(found.hash)}</p>
          </div>
        )}
        {found?.whole === false && (
          <div class="note note--warn">
            <p>
              <b>{audit.broken}</b>
            </p>
            <ul class="faults">
              {found.faults.map(({ type, position }) => (
                <li key={`${type}${position}`}>
                  {audit.fault[type]} {position !== undefined && audit.at(position)}
                </li>
              ))}
            </ul>
          </div>
        )}
      </div>
    </section>
  );
}

/** Reads the log page by page, by what it is filtered for, and hands it over. */
function SaveCsv({ filter }: { readonly filter: typeof unfiltered }): VNode {
  const { audit } = words;
  const { ask, send } = useDepartment();
  const [said, setSaid] = useState("");
  const [problem, setProblem] = useState<ApiProblem | undefined>(undefined);
  const [isBusy, setBusy] = useState(false);
  const save = async (): Promise<void> => {
    setBusy(true);
    setProblem(undefined);
    setSaid(audit.exporting);
    const entries: AuditEntry[] = [];
    let before: number | undefined;
    for (let page = 0; page < mostPages; page += 1) {
      const query = { ...filter, before: before?.toString(), limit: "200" };
      const answer = await ask({ path: "audit", query, schema: auditAnswerSchema });
      if (!answer.ok) {
        setSaid("");
        setProblem(answer.error);
        send({ type: "refused", problem: answer.error });
        return;
      }
      entries.push(...answer.value.entries);
      before = answer.value.next;
      if (before === undefined) break;
    }
    const name = `audit-${entries[0]?.position ?? 0}.csv`;
    saveText({ name, text: auditCsv(entries), type: "text/csv" });
    const cut = before === undefined ? "" : ` ${audit.exportCut(entries.length)}`;
    setSaid(`${audit.exported(name, entries.length)}${cut}`);
  };
  return (
    <>
      <button
        class="button"
        type="button"
        aria-disabled={isBusy}
        onClick={() => !isBusy && void save().finally(() => setBusy(false))}
      >
        {audit.exportCsv}
      </button>
      <span role="status" class="soft">
        {said}
      </span>
      <ProblemNote problem={problem} />
    </>
  );
}
