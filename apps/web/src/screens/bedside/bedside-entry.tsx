import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { ChoiceField } from "../../components/choice-field/choice-field.tsx";
import { FieldMessages, messageId } from "../../components/field-messages/field-messages.tsx";
import { MeasureField } from "../../components/measure-field/measure-field.tsx";
import { SelectField } from "../../components/select-field/select-field.tsx";
import type { Later } from "../../later/later.ts";
import { messages } from "../../messages/index.ts";
import {
  alwaysChosen,
  type BedsideField,
  type BedsideState,
  type ChosenField,
  optionalFields,
  type TypedField,
} from "../../state/bedside-state.ts";
import type { FieldMessage } from "../../state/field-message.ts";
import type { NextHint } from "../../state/next-hint.ts";
import type { BedsideEvent } from "../../state/update.ts";
import { MoreFields } from "./more-fields.tsx";

interface Props {
  readonly state: BedsideState;
  readonly items: readonly FieldMessage[];
  /** What one more measurement would buy. */
  readonly next: NextHint | undefined;
  readonly later: Later | undefined;
  readonly send: (event: BedsideEvent) => void;
}

/** The fields: two in sight, the others on demand. */
export function BedsideEntry({ state, items, next, later, send }: Props): VNode {
  const [helped, setHelped] = useState<TypedField | undefined>(undefined);
  const help = (fields: readonly TypedField[]): VNode | undefined =>
    helped !== undefined && fields.includes(helped) && later !== undefined ? (
      <later.TechniqueHelp
        field={helped}
        posture={state.texts.posture}
        people={state.texts.people}
        onClose={() => {
          setHelped(undefined);
          document.getElementById(helped)?.focus();
        }}
      />
    ) : undefined;
  const open = optionalFields.filter(([first]) => state.open.includes(first)).flat();
  const measure = (field: TypedField, onEnter?: TypedField): VNode => (
    <MeasureField
      key={field}
      field={field}
      text={state.texts[field]}
      buys={next?.field === field && state.texts[field] === "" ? messages.narrowsHere(next) : undefined}
      describedBy={
        items.some((item) => item.field === field && item.kind === "issue") ? messageId(field) : undefined
      }
      isHelped={helped === field}
      onHelp={later?.hasTechnique(field) ? () => setHelped(helped === field ? undefined : field) : undefined}
      onType={(text) => send({ type: "typed", field, text })}
      onLeave={() => send({ type: "settled" })}
      isLast={onEnter === undefined}
      onEnter={onEnter === undefined ? showSheet : () => document.getElementById(onEnter)?.focus()}
    />
  );
  const choose = (field: ChosenField): VNode => (
    <ChoiceField
      key={field}
      field={field}
      value={state.texts[field]}
      onChoose={(text) => send({ type: "chosen", field, text })}
    />
  );
  const about = (isAbout: (field: string) => boolean): VNode => (
    <FieldMessages
      items={items.filter((item) => isAbout(item.field))}
      onAccept={(proposal, field) => send({ type: "proposal-accepted", proposal, field })}
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
      {help(["lengthCm", "armMm"])}
      {alwaysChosen.map((field) => (
        <SelectField
          key={field}
          field={field}
          value={state.texts[field]}
          onChoose={(text) => send({ type: "chosen", field, text })}
        />
      ))}
      {state.carriedOver && <p class="bedside__carried">{messages.carriedOver}</p>}
      {about(isAlwaysThere)}
      {open.map((field) => (isChosen(field) ? choose(field) : measure(field)))}
      {help(open.filter((field) => !isChosen(field)))}
      {about((field) => !isAlwaysThere(field))}
      <MoreFields state={state} next={next} send={send} />
    </form>
  );
}

function isAlwaysThere(field: string): boolean {
  return field === "lengthCm" || field === "armMm";
}

function isChosen(field: BedsideField): field is ChosenField {
  return field in messages.choices;
}

/** On a narrow screen the doses stand below the fields: whoever is done with those wants to see these. */
function showSheet(): void {
  if (matchMedia("(max-width: 59.99rem)").matches) document.querySelector(".sheet")?.scrollIntoView();
}
