import type { VNode } from "preact";
import { messages } from "../../messages/index.ts";

interface Props {
  readonly canStartOver: boolean;
  readonly canBringBack: boolean;
  readonly onNextChild: () => void;
  readonly onBringBack: () => void;
}

/** The name of the tool and the way to the next child. */
export function Masthead({ canStartOver, canBringBack, onNextChild, onBringBack }: Props): VNode {
  return (
    <header class="masthead">
      <h1>
        <svg class="masthead__sign" viewBox="0 0 32 24" aria-hidden="true">
          <path d="M2 8h28M7 8v-4M15 8v-4M23 8v-4M27 8v-4" />
          <path class="masthead__knife" d="M11 9l5 12H6z" />
        </svg>
        {messages.name} <span>{messages.screen}</span>
      </h1>
      {canBringBack ? (
        <button class="button screen-only" type="button" onClick={onBringBack}>
          {messages.bringBack}
        </button>
      ) : (
        <button class="button screen-only" type="button" onClick={onNextChild} disabled={!canStartOver}>
          {messages.nextChild}
        </button>
      )}
    </header>
  );
}
