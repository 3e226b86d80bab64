import type { EstimatedChild } from "@steelyard/core/body";
import { type DoseLine, type Formulary, trackGivenDoses, type Weights } from "@steelyard/core/dosing";
import { kilograms } from "@steelyard/core/units";
import { draftFormulary } from "@steelyard/formulary";
import { type CaseEventDraft, type CaseRecord, foldCase } from "@steelyard/records/case";
import type { VNode } from "preact";
import { useEffect, useId, useMemo, useRef, useState } from "preact/hooks";
import { AddNote } from "../../components/case-log/add-note.tsx";
import { CaseBar } from "../../components/case-log/case-bar.tsx";
import { DeskRemarks } from "../../components/case-log/desk-remarks.tsx";
import { DueList } from "../../components/case-log/due-list.tsx";
import { ExportButtons } from "../../components/case-log/export-buttons.tsx";
import { LogList } from "../../components/case-log/log-list.tsx";
import { OtherFormularies } from "../../components/case-log/other-formularies.tsx";
import { StopOrRun } from "../../components/case-log/stop-or-run.tsx";
import { writeQuantity } from "../../components/quantity/quantity.tsx";
import { useCaseDesk } from "../../effects/case-desk/use-case-desk.ts";
import { keepCase, keptCase } from "../../effects/kept-case.ts";
import { eventVersions } from "../../effects/running-versions.ts";
import { saveText } from "../../effects/save-text.ts";
import { watchClock } from "../../effects/watch-clock.ts";
import type { Report } from "../../later/compute-report.ts";
import { cases } from "../../messages/cases.ts";
import type { BedsideState } from "../../state/bedside-state.ts";
import { measured, secondReading } from "../../state/case-facts.ts";
import { followChild } from "../../state/current-case.ts";
import { doseToGive, dueAt, soonestFirst } from "../../state/due.ts";
import type { Giving } from "../../state/giving.ts";
import type { FormularyIndex } from "../../state/index-formulary.ts";
import "./case-log.css";

interface Props {
  readonly state: BedsideState;
  readonly child: EstimatedChild | undefined;
  readonly report: Report | undefined;
  readonly onGiving: (giving: Giving | undefined) => void;
}

/** How long what was just marked can be undone at the foot of the screen, ms. */
const undoMs = 10_000;

/** The clock and the log of the child on Bedside. */
export function CaseLog({ state, child, report, onGiving }: Props): VNode | null {
  const { desk, state: kept } = useCaseDesk();
  const [current, setCurrent] = useState(keptCase);
  const [now, setNow] = useState(() => Date.now());
  const [isOpen, setOpen] = useState(false);
  const [who, setWho] = useState("");
  const [marked, setMarked] = useState<{ readonly what: string; readonly id: string } | undefined>(undefined);
  const panelId = useId();

  const followed = followChild(current, state);
  useEffect(() => {
    if (followed !== current) setCurrent(followed);
  }, [followed, current]);
  useEffect(() => keepCase(followed), [followed]);

  const caseId = followed?.leftWith === undefined ? followed?.caseId : undefined;
  const record = useMemo((): CaseRecord | undefined => {
    const events = kept.events.filter((event) => event.caseId === caseId);
    return events.length === 0 ? undefined : foldCase(events);
  }, [kept.events, caseId]);

  const origin = record === undefined ? 0 : Date.parse(record.startedAt);
  useEffect(() => {
    const second = (time: number): number => Math.floor((time - origin) / 1000);
    // Drawn anew when the clock shows something else, and not four times a second.
    return watchClock((time) => setNow((known) => (second(known) === second(time) ? known : time)));
  }, [origin]);

  const add = (...drafts: readonly CaseEventDraft[]): Promise<string | undefined> => {
    const signed = drafts.map((draft) => (who.trim() === "" ? draft : { by: who.trim(), ...draft }));
    if (caseId !== undefined) return desk.add(caseId, signed).then((events) => events.at(-1)?.id);
    const fresh = desk.newCase();
    setCurrent({ caseId: fresh.caseId });
    const start: CaseEventDraft = { type: "case-started", code: fresh.code };
    return desk
      .add(fresh.caseId, [start, ...(child === undefined ? [] : measured(child)), ...signed])
      .then((events) => events.at(-1)?.id);
  };

  // What the child measures goes into the log when it changes, once the fingers rest.
  const known = useRef("");
  useEffect(() => {
    if (caseId === undefined || child === undefined || state.typing !== undefined) return;
    if (record === undefined || record.closedAt !== undefined) return;
    const drafts = measured(child);
    const said = JSON.stringify([drafts, state.texts.lengthCm2, state.texts.armMm2]);
    if (said === known.current) return;
    known.current = said;
    const last = [record.measurement?.measurements, record.estimate?.estimate];
    const same =
      JSON.stringify(last) ===
      JSON.stringify(
        drafts.map((d) => ("measurements" in d ? d.measurements : "estimate" in d ? d.estimate : d)),
      );
    const second = secondReading(state.texts);
    const known2 = record.secondReadings.at(-1);
    const isRead =
      second !== undefined && (known2?.lengthCm !== second.lengthCm || known2?.armMm !== second.armMm);
    const fresh = [...(same ? [] : drafts), ...(isRead ? [second] : [])];
    if (fresh.length > 0) void desk.add(caseId, fresh);
  }, [caseId, child, state.typing, state.texts, record, desk]);

  const formulary = state.formulary?.own?.formulary;
  const tracked = useMemo(() => trackOf(record, child, formulary), [record, child, formulary]);
  const timesGiven = useMemo(() => {
    const times = new Map<string, number>();
    for (const { given } of record?.doses ?? []) times.set(given.lineId, (times.get(given.lineId) ?? 0) + 1);
    return times;
  }, [record]);

  const give = (line: DoseLine): void => {
    const given = doseToGive(line, timesGiven.get(line.id) ?? 0);
    const what = `${given.medicine}, ${writeQuantity({ dose: given.dose })}`;
    void add({ type: "dose-given", given }).then((id) => id !== undefined && setMarked({ what, id }));
  };
  const giveNow = useRef(give);
  giveNow.current = give;
  useEffect(() => {
    onGiving(child === undefined ? undefined : { give: (line) => giveNow.current(line), timesGiven });
  }, [child === undefined, timesGiven, onGiving]);
  useEffect(() => () => onGiving(undefined), [onGiving]);
  useEffect(() => {
    if (marked === undefined) return;
    const pause = setTimeout(() => setMarked(undefined), undoMs);
    return () => clearTimeout(pause);
  }, [marked]);

  if (child === undefined && caseId === undefined) return null;
  const startedAt = record === undefined ? undefined : Date.parse(record.startedAt);
  const end = record?.closedAt === undefined ? now : Date.parse(record.closedAt);
  const seconds = startedAt === undefined ? undefined : Math.max(0, (end - startedAt) / 1000);
  const nowMinutes = (seconds ?? 0) / 60;
  const isRunning = record !== undefined && record.closedAt === undefined;
  const soonest = soonestFirst(tracked?.lines ?? [])[0];
  const lineOf = (lineId: string): DoseLine | undefined => sheetLine(state.formulary?.index, report, lineId);
  return (
    <section
      class="case-log screen-only"
      aria-label={cases.bar}
      onKeyDown={({ key, currentTarget }) => {
        if (key !== "Escape" || !isOpen) return;
        setOpen(false);
        currentTarget.querySelector<HTMLElement>("[aria-controls]")?.focus();
      }}
    >
      {isOpen && record !== undefined && (
        <div id={panelId} class="case-log__panel">
          <h2>{cases.code(record.code)}</h2>
          <DeskRemarks desk={kept} onRetry={() => void desk.retry()} />
          <h3>{cases.givenTitle}</h3>
          {tracked !== undefined && (
            <DueList
              tracked={tracked}
              nowMinutes={nowMinutes}
              isRunning={isRunning}
              lineOf={lineOf}
              onGive={give}
            />
          )}
          <OtherFormularies record={record} tracked={tracked} now={eventVersions().formulary} />
          <h3>{cases.logTitle}</h3>
          <AddNote onNote={(text) => void add({ type: "note", text })} />
          <LogList record={record} onAdd={(draft) => void add(draft)} />
          <label class="case-log__who">
            {cases.whoLabel}
            <input
              value={who}
              maxLength={40}
              autocomplete="off"
              aria-describedby={`${panelId}-who`}
              onInput={({ currentTarget }) => setWho(currentTarget.value)}
            />
            <span id={`${panelId}-who`}>{cases.whoHint}</span>
          </label>
          <StopOrRun record={record} onAdd={(draft) => void add(draft)} />
          <ExportButtons record={record} save={saveText} />
        </div>
      )}
      {!isOpen && kept.keeps === "memory" && record !== undefined && (
        <DeskRemarks desk={kept} onRetry={() => void desk.retry()} />
      )}
      <CaseBar
        seconds={seconds}
        isStopped={record?.closedAt !== undefined}
        soonest={soonest?.nextDue && { medicine: soonest.medicine, due: dueAt(soonest.nextDue, nowMinutes) }}
        isOpen={isOpen}
        panelId={panelId}
        marked={
          marked && {
            what: marked.what,
            onUndo: () => {
              void add({ type: "undo", target: marked.id });
              setMarked(undefined);
            },
          }
        }
        onStart={() => void add()}
        onTurn={() => setOpen(!isOpen)}
      />
    </section>
  );
}

/** A line of the sheet as it stands, if it has a dose. */
function sheetLine(
  index: FormularyIndex | undefined,
  report: Report | undefined,
  lineId: string,
): DoseLine | undefined {
  const problem = index?.problems.find(({ uses }) => uses.some(({ id }) => id === lineId))?.problem;
  const line = problem && report?.linesOf(problem).find(({ id }) => id === lineId);
  return line?.unavailable === undefined ? line : undefined;
}

/** Totals and what is due; on the child's weights, or those that the log has where the fields are empty. */
function trackOf(
  record: CaseRecord | undefined,
  child: EstimatedChild | undefined,
  formulary: Formulary = draftFormulary,
) {
  const estimate = record?.estimate?.estimate;
  const weights: Weights | undefined =
    child?.weights ??
    (estimate && {
      totalKg: kilograms(estimate.totalKg),
      ...(estimate.idealKg !== undefined && { idealKg: kilograms(estimate.idealKg) }),
    });
  if (record === undefined || weights === undefined) return undefined;
  const startedAt = Date.parse(record.startedAt);
  return trackGivenDoses({
    formulary,
    weights,
    // A running infusion has no next dose and no sum that could be known here.
    given: record.doses
      .filter(({ given }) => given.dose.per === undefined)
      .map(({ at, given }) => ({
        lineId: given.lineId,
        dose: given.dose,
        atMinutes: (Date.parse(at) - startedAt) / 60_000,
      })),
  });
}
