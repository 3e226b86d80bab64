import type { VNode } from "preact";
import { messages } from "../../messages/index.ts";
import { type BedsideState, type OptionalField, optionalFields } from "../../state/bedside-state.ts";
import type { NextHint } from "../../state/next-hint.ts";
import { addressOf } from "../../state/screens.ts";
import type { BedsideEvent } from "../../state/update.ts";

interface Props {
  readonly state: BedsideState;
  readonly next: NextHint | undefined;
  readonly send: (event: BedsideEvent) => void;
}

/** Ways to say more, a few in sight: a child in need has no patience for ten. */
export function MoreFields({ state, next, send }: Props): VNode {
  const folded = optionalFields
    .map(([first]) => first)
    .filter((field) => !state.open.includes(field))
    // A third reading is for two that differ.
    .filter((field) => field !== "lengthCm3" || state.open.includes("lengthCm2"));
  const helps = folded.find((field) => field === next?.field);
  const girth =
    helps ?? folded.find((field) => field === "waistCm" || field === "thighCm" || field === "calfCm");
  const often = folded.filter((field) => field === "sex" || field === "ageMonths" || field === "carerKg");
  const first = girth === undefined ? often : [girth, ...often];
  const offered = state.offersAll ? [...first, ...folded.filter((field) => !first.includes(field))] : first;
  return (
    <fieldset class="bedside__ask screen-only" aria-label={messages.addMore}>
      {offered.map((field) => (
        <Ask
          key={field}
          words={messages.ask[field]}
          buys={field === helps ? next : undefined}
          onClick={() => ask(field, send)}
        />
      ))}
      <a class="chip" href={addressOf({ screen: "reader", path: "" })}>
        {messages.secondReader}
      </a>
      {offered.length < folded.length && (
        <Ask words={messages.askAll} onClick={() => askAll(folded, first, send)} />
      )}
    </fieldset>
  );
}

function Ask({
  words: [word, whatItDoes],
  buys,
  onClick,
}: {
  readonly words: readonly [string, string];
  readonly buys?: NextHint | undefined;
  readonly onClick: () => void;
}): VNode {
  return (
    <button
      class="chip"
      type="button"
      data-ask={whatItDoes}
      aria-label={buys === undefined ? whatItDoes : `${whatItDoes}, ${messages.narrows(buys)}`}
      onClick={onClick}
    >
      {word}
      {buys !== undefined && <b> {messages.narrows(buys)}</b>}
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
  first: readonly OptionalField[],
  send: Props["send"],
): void {
  send({ type: "asked-for-all" });
  const next = folded.find((field) => !first.includes(field));
  if (next !== undefined) focusOn(`[data-ask="${messages.ask[next][1]}"]`);
}

function focusOn(selector: string): void {
  requestAnimationFrame(() => document.querySelector<HTMLElement>(selector)?.focus());
}
