import type { VNode } from "preact";
import { ChoiceField } from "../../components/choice-field/choice-field.tsx";
import { FieldMessages, messageId } from "../../components/field-messages/field-messages.tsx";
import { MeasureField } from "../../components/measure-field/measure-field.tsx";
import { messages } from "../../messages/index.ts";
import type { BedsideState, OptionalField } from "../../state/bedside-state.ts";
import type { FieldMessage } from "../../state/read-bedside.ts";
import type { BedsideEvent } from "../../state/update.ts";

interface Props {
  readonly state: BedsideState;
  readonly items: readonly FieldMessage[];
  readonly send: (event: BedsideEvent) => void;
}

type TypedField = "lengthCm" | "armMm" | "ageMonths";

/** The fields: two in sight, two on demand. */
export function BedsideEntry({ state, items, send }: Props): VNode {
  const folded = (["sex", "ageMonths"] as const).filter((field) => !state.open.includes(field));
  const measure = (field: TypedField, next?: TypedField): VNode => (
    <MeasureField
      field={field}
      text={state.texts[field]}
      describedBy={
        items.some((item) => item.field === field && item.kind === "issue") ? messageId(field) : undefined
      }
      onType={(text) => send({ type: "typed", field, text })}
      onLeave={() => send({ type: "settled" })}
      onEnter={next === undefined ? undefined : () => document.getElementById(next)?.focus()}
    />
  );
  const about = (...fields: readonly string[]): VNode => (
    <FieldMessages
      items={items.filter((item) => fields.includes(item.field))}
      onAccept={(proposal) => send({ type: "proposal-accepted", proposal })}
    />
  );
  return (
    <form
      class="bedside__entry"
      aria-label={messages.entry}
      autocomplete="off"
      onSubmit={(event) => event.preventDefault()}
    >
      {measure("lengthCm", "armMm")}
      {measure("armMm")}
      {state.carriedOver && <p class="bedside__carried">{messages.carriedOver}</p>}
      {about("lengthCm", "armMm")}
      {state.open.includes("sex") && (
        <ChoiceField
          value={state.texts.sex}
          onChoose={(text) => send({ type: "typed", field: "sex", text })}
        />
      )}
      {state.open.includes("ageMonths") && measure("ageMonths")}
      {about("ageMonths")}
      {folded.length > 0 && (
        <div class="bedside__ask screen-only">
          {folded.map((field) => (
            <button
              key={field}
              class="button button--quiet"
              type="button"
              aria-label={messages.ask[field]}
              onClick={() => ask(field, send)}
            >
              {messages.fields[field].label}
            </button>
          ))}
        </div>
      )}
    </form>
  );
}

/** Opens a field and goes there, as that is where the person is looking next. */
function ask(field: OptionalField, send: Props["send"]): void {
  send({ type: "asked-for", field });
  requestAnimationFrame(() => {
    const input =
      field === "sex"
        ? document.querySelector<HTMLElement>("input[name=sex]:checked")
        : document.getElementById(field);
    input?.focus();
  });
}
