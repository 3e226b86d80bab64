import type { VNode } from "preact";
import { useLayoutEffect, useRef } from "preact/hooks";
import { cases } from "../../messages/cases.ts";
import type { Due } from "../../state/due.ts";
import { writeClock } from "./clock.ts";

interface Props {
  /** Seconds since the start; absent before it. */
  readonly seconds: number | undefined;
  readonly isStopped: boolean;
  readonly soonest: { readonly medicine: string; readonly due: Due } | undefined;
  readonly isOpen: boolean;
  readonly panelId: string;
  /** What was marked last, while it can be undone from here. */
  readonly marked: { readonly what: string; readonly onUndo: () => void } | undefined;
  readonly onStart: () => void;
  readonly onTurn: () => void;
}

/** The clock at the foot of the screen: time since the start, what is due next, and the way to the log. */
export function CaseBar({
  seconds,
  isStopped,
  soonest,
  isOpen,
  panelId,
  marked,
  onStart,
  onTurn,
}: Props): VNode {
  const log = useRef<HTMLButtonElement>(null);
  // A button that goes away hands its focus on.
  const handsOn = useRef(false);
  useLayoutEffect(() => {
    if (!handsOn.current || log.current === null) return;
    handsOn.current = false;
    log.current.focus({ preventScroll: true });
  });
  const thenToLog = (act: () => void) => (): void => {
    handsOn.current = true;
    act();
  };
  return (
    <div class="case-bar">
      {seconds === undefined ? (
        <button class="button case-bar__start" type="button" onClick={thenToLog(onStart)}>
          {cases.start} <span>{cases.startHint}</span>
        </button>
      ) : (
        <>
          <p class="case-bar__clock" role="timer" aria-label={cases.clock}>
            <b>{writeClock(seconds)}</b>
          </p>
          <p class={`case-bar__due${soonest === undefined ? "" : ` case-bar__due--${soonest.due.type}`}`}>
            {isStopped && cases.stopped}
            {!isStopped && soonest === undefined && cases.noneDue}
            {!isStopped && soonest !== undefined && (
              <>
                <span>{soonest.medicine}</span> <b>{cases.due(soonest.due, writeClock)}</b>
              </>
            )}
          </p>
          <button
            ref={log}
            class="button"
            type="button"
            aria-expanded={isOpen}
            aria-controls={panelId}
            aria-label={isOpen ? cases.closeLog : undefined}
            onClick={onTurn}
          >
            {cases.openLog}
          </button>
        </>
      )}
      <div class="case-bar__marked" role="status">
        {marked !== undefined && (
          <>
            <span>{cases.marked(marked.what)}</span>
            <button class="link" type="button" onClick={thenToLog(marked.onUndo)}>
              {cases.undo}
            </button>
          </>
        )}
      </div>
    </div>
  );
}
