import type { VNode } from "preact";
import { messages } from "../../messages/index.ts";
import { type BedsideState, isTouched } from "../../state/bedside-state.ts";
import type { BedsideEvent } from "../../state/update.ts";

interface Props {
  readonly state: BedsideState;
  readonly send: (event: BedsideEvent) => void;
}

/** The way to the next child, and back again where that was a slip of the thumb. */
export function NextChild({ state, send }: Props): VNode {
  const touched = isTouched(state.texts);
  return state.setAside !== undefined && !touched ? (
    <button class="button" type="button" onClick={() => send({ type: "brought-back" })}>
      {messages.bringBack}
    </button>
  ) : (
    <button class="button" type="button" onClick={() => send({ type: "next-child" })} disabled={!touched}>
      {messages.nextChild}
    </button>
  );
}
