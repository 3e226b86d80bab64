import type { ComponentChildren, VNode } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { words } from "../messages/index.ts";

interface Props {
  readonly label: string;
  /** What will happen, in a sentence. */
  readonly ask: ComponentChildren;
  /** The words on the button that does it. */
  readonly yes: string;
  readonly isBusy?: boolean;
  readonly isLoud?: boolean;
  readonly onSure: () => void;
}

/** A button that asks once more, in place, before it does something that others will notice. */
export function SureButton({ label, ask, yes, isBusy = false, isLoud = false, onSure }: Props): VNode {
  const [isAsking, setAsking] = useState(false);
  const first = useRef<HTMLButtonElement>(null);
  const answer = useRef<HTMLButtonElement>(null);
  const wasAsking = useRef(false);
  useEffect(() => {
    if (isAsking) answer.current?.focus();
    else if (wasAsking.current) first.current?.focus();
    wasAsking.current = isAsking;
  }, [isAsking]);
  if (!isAsking)
    return (
      <button
        ref={first}
        class={`button${isLoud ? " button--main" : ""}`}
        type="button"
        aria-disabled={isBusy}
        onClick={() => !isBusy && setAsking(true)}
      >
        {label}
      </button>
    );
  return (
    <fieldset class="sure" aria-label={label}>
      <p>{ask}</p>
      <p class="row">
        <button
          ref={answer}
          class="button button--main"
          type="button"
          onClick={() => {
            setAsking(false);
            onSure();
          }}
        >
          {yes}
        </button>
        <button class="button" type="button" onClick={() => setAsking(false)}>
          {words.no}
        </button>
      </p>
    </fieldset>
  );
}
