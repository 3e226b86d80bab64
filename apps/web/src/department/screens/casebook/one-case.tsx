import { type CaseEvent, type CaseEventDraft, type CaseRecord, foldCase } from "@steelyard/records/case";
import { caseAnswerSchema, caseEventAnswerSchema } from "@steelyard/records/department";
import type { VNode } from "preact";
import { useMemo, useState } from "preact/hooks";
import { AddNote } from "../../../components/case-log/add-note.tsx";
import { writeQuantity } from "../../../components/quantity/quantity.tsx";
import { cases as caseMessages } from "../../../messages/cases.ts";
import { LaterWeight } from "../../../screens/casebook/later-weight.tsx";
import { percentOff } from "../../../state/casebook.ts";
import { formularyIndex } from "../../../state/formulary-index.ts";
import { versions } from "../../../state/versions.ts";
import { Answer } from "../../components/answer.tsx";
import { ProblemNote } from "../../components/problem-note.tsx";
import { writeError } from "../../components/write-percent.ts";
import { writeTime } from "../../components/write-time.ts";
import { words } from "../../messages/index.ts";
import { departmentEvent } from "../../state/case-events.ts";
import { useAct, useAnswer, useDepartment } from "../../state/department-context.ts";
import { hashOf } from "../../state/department-screens.ts";
import type { Person } from "../../state/department-state.ts";
import { LocalLink } from "./local-link.tsx";
import { Timeline } from "./timeline.tsx";

interface Props {
  readonly caseId: string;
  readonly person: Person;
}

/** One case: what was estimated, what the scale said, its timeline, and what may be added here. */
export function OneCase({ caseId, person }: Props): VNode {
  const { register } = words;
  const { send } = useDepartment();
  const answer = useAnswer({ path: "case", query: { caseId }, schema: caseAnswerSchema });
  const { act, isBusy, problem } = useAct();
  /** Typed and not yet acknowledged: kept through a session that ends, and sent under the same id. */
  const [unsent, setUnsent] = useState<readonly CaseEvent[]>([]);
  const [said, setSaid] = useState("");
  const deliver = (waiting: readonly CaseEvent[]): void => {
    const [event, ...rest] = waiting;
    if (event === undefined) {
      setSaid(register.sent);
      send({ type: "changed", paths: ["case", "cases", "accuracy"] });
      return;
    }
    act({ path: "case/event", body: { event }, schema: caseEventAnswerSchema }, () => {
      setUnsent(rest);
      deliver(rest);
    });
  };
  const add = (draft: CaseEventDraft): void => {
    setSaid("");
    const event = departmentEvent(draft, {
      caseId,
      by: person.name,
      versions: {
        software: versions.software,
        model: versions.model,
        formulary: formularyIndex.version,
        formularySigned: formularyIndex.signed,
      },
      id: crypto.randomUUID(),
      at: new Date().toISOString(),
    });
    const waiting = [...unsent, event];
    setUnsent(waiting);
    deliver(waiting);
  };
  return (
    <div class="stack case-page narrow-text">
      <p class="screen-only">
        <a class="case-page__back" href={hashOf("cases")}>
          {register.all}
        </a>
      </p>
      <Answer answer={answer}>
        {({ events, localLink }) => (
          <>
            <CaseFacts events={events}>
              {(record) => (
                <>
                  <section class="stack screen-only" aria-labelledby="later">
                    <h3 id="later">{caseMessages.casebook.laterTitle}</h3>
                    <LaterWeight record={record} onKeep={add} />
                  </section>
                  <ProblemNote problem={problem} />
                  {unsent.length > 0 && (
                    <p class="note row" role="status">
                      {register.unsent(unsent.length)}
                      <button
                        class="button"
                        type="button"
                        aria-disabled={isBusy}
                        onClick={() => deliver(unsent)}
                      >
                        {register.sendAgain}
                      </button>
                    </p>
                  )}
                  <p role="status">{said}</p>
                  {localLink && <LocalLink caseId={caseId} />}
                  <section class="stack" aria-labelledby="timeline">
                    <h3 id="timeline">{register.timeline}</h3>
                    <AddNote onNote={(text) => add({ type: "note", text })} />
                    <Timeline record={record} onAdd={add} />
                  </section>
                  <p class="soft">{register.ran(record.versions)}</p>
                </>
              )}
            </CaseFacts>
          </>
        )}
      </Answer>
    </div>
  );
}

interface FactsProps {
  readonly events: readonly CaseEvent[];
  readonly children: (record: CaseRecord) => VNode;
}

/** What it is called, when it began, its weight; then whatever follows from its record. */
function CaseFacts({ events, children }: FactsProps): VNode {
  const { register } = words;
  const record = useMemo(() => (events.length === 0 ? undefined : foldCase(events)), [events]);
  if (record === undefined) return <p role="status">{register.none}</p>;
  const { code, startedAt, closedAt, estimate, laterWeight } = record;
  const off = percentOff(record);
  return (
    <>
      <h2>{caseMessages.code(code === "" ? record.caseId.slice(0, 8) : code)}</h2>
      <p class="soft">
        {register.started(writeTime(startedAt))}
        {closedAt === undefined && `, ${register.running}`}
      </p>
      {estimate !== undefined && (
        <p class="case-page__weight">
          <b>{writeQuantity({ kg: estimate.estimate.totalKg })}</b>{" "}
          {writeQuantity({ fromKg: estimate.estimate.low95Kg, toKg: estimate.estimate.high95Kg })}
          {" · "}
          {laterWeight === undefined
            ? register.weightDue
            : register.weighed(writeQuantity({ kg: laterWeight.kg }), laterWeight.on)}
          {off !== undefined && `, ${register.off(writeError(off))}`}
        </p>
      )}
      {children(record)}
    </>
  );
}
