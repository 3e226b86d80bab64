import type { VNode } from "preact";
import type { NextHint } from "../../later/compute-report.ts";
import { messages } from "../../messages/index.ts";
import { type BedsideState, type OptionalField, optionalFields } from "../../state/bedside-state.ts";
import type { BedsideEvent } from "../../state/update.ts";

interface Props {
  readonly state: BedsideState;
  readonly next: NextHint | undefined;
  readonly send: (event: BedsideEvent) => void;
}

/** Ways to say more, three in sight: a child in need has no patience for ten. */
export function MoreFields({ state, next, send }: Props): VNode | null {
  const folded = optionalFields.map(([first]) => first).filter((field) => !state.open.includes(field));
  if (folded.length === 0) return null;
  const nextGirth = folded.find((field) => field === "waistCm" || field === "thighCm" || field === "calfCm");
  const often = folded.filter((field) => field === "sex" || field === "ageMonths" || field === nextGirth);
  const offered = state.offersAll ? folded : often;
  return (
    <div class="bedside__more screen-only">
      <p>{next === undefined ? messages.addMore : messages.narrows(next)}</p>
      <div class="bedside__ask">
        {offered.map((field) => (
          <Ask key={field} words={messages.ask[field]} onClick={() => ask(field, send)} />
        ))}
        {offered.length < folded.length && (
          <Ask words={messages.askAll} onClick={() => askAll(folded, often, send)} />
        )}
      </div>
    </div>
  );
}

function Ask({
  words: [word, whatItDoes],
  onClick,
}: {
  readonly words: readonly [string, string];
  readonly onClick: () => void;
}): VNode {
  return (
    <button class="button button--quiet" type="button" aria-label={whatItDoes} onClick={onClick}>
      {word}
    </button>
  );
}

/** Opens a field and goes there, as that is where the person is looking next. */
function ask(field: OptionalField, send: Props["send"]): void {
  send({ type: "asked-for", field });
  focusOn(`#${field}, input[name=${field}]:checked`);
}

function askAll(
  folded: readonly OptionalField[],
  often: readonly OptionalField[],
  send: Props["send"],
): void {
  send({ type: "asked-for-all" });
  const first = folded.find((field) => !often.includes(field));
  if (first !== undefined) focusOn(`[aria-label="${messages.ask[first][1]}"]`);
}

function focusOn(selector: string): void {
  requestAnimationFrame(() => document.querySelector<HTMLElement>(selector)?.focus());
}
