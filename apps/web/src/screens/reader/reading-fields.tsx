import { type EntryIssue, type Proposal, type RepeatedField, readEntry } from "@steelyard/core/entry";
import { describeEntryIssue } from "@steelyard/core/wording";
import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { FieldMessages, messageId } from "../../components/field-messages/field-messages.tsx";
import { MeasureField } from "../../components/measure-field/measure-field.tsx";
import { language } from "../../messages/language.ts";
import { readerMessages } from "../../messages/reader.ts";
import type { FieldMessage } from "../../state/field-message.ts";
import { sumOfParts } from "../../state/sum-of-parts.ts";
import { textsOfProposal } from "../../state/texts-of-proposal.ts";
import type { Reading } from "./reading-code.ts";

interface Props {
  /** What the button says. */
  readonly doneWord: string;
  readonly onDone: (reading: Reading) => void;
  readonly onCancel?: (() => void) | undefined;
}

const places = { lengthCm: "lengthCm2", armMm: "armMm2" } as const;

/** Length and arm, to be typed by somebody who has not seen the first values. */
export function ReadingFields({ doneWord, onDone, onCancel }: Props): VNode {
  const [texts, setTexts] = useState<Readonly<Record<RepeatedField, string>>>({ lengthCm: "", armMm: "" });
  const [typing, setTyping] = useState<RepeatedField | undefined>(undefined);
  const length = readEntry("lengthCm", sumOfParts(texts.lengthCm) ?? texts.lengthCm);
  const arm = readEntry("armMm", texts.armMm);
  const items = [
    ...(length.ok ? [] : doubt("lengthCm", length.error, typing)),
    ...(arm.ok ? [] : doubt("armMm", arm.error, typing)),
  ];
  const accept = (proposal: Proposal, place: string): void => {
    const field = place === places.armMm ? "armMm" : "lengthCm";
    setTexts({ ...texts, [field]: Object.values(textsOfProposal(proposal))[0] ?? "" });
  };
  const isReady = length.ok && (arm.ok || arm.error.type === "empty");
  const measure = (field: RepeatedField): VNode => (
    <MeasureField
      field={places[field]}
      text={texts[field]}
      describedBy={items.some((item) => item.field === places[field]) ? messageId(places[field]) : undefined}
      onType={(text) => {
        setTexts({ ...texts, [field]: text });
        setTyping(field);
      }}
      onLeave={() => setTyping(undefined)}
      isLast={field === "armMm"}
      onEnter={field === "lengthCm" ? () => document.getElementById(places.armMm)?.focus() : submit}
    />
  );
  return (
    <form
      class="reader__form"
      autocomplete="off"
      onSubmit={(event) => {
        event.preventDefault();
        if (isReady) onDone({ lengthCm: length.value.value, ...(arm.ok && { armMm: arm.value.value }) });
      }}
    >
      <div class="reader__fields">
        {measure("lengthCm")}
        {measure("armMm")}
      </div>
      <FieldMessages items={items} onAccept={accept} />
      <div class="reader__ways">
        <button class="button reader__main" type="submit" disabled={!isReady}>
          {doneWord}
        </button>
        {onCancel !== undefined && (
          <button class="button" type="button" onClick={onCancel}>
            {readerMessages.cancel}
          </button>
        )}
      </div>
    </form>
  );
}

function doubt(
  field: RepeatedField,
  issue: EntryIssue,
  typing: RepeatedField | undefined,
): readonly FieldMessage[] {
  if (issue.type === "empty" || field === typing) return [];
  const proposals = "proposals" in issue ? issue.proposals : [];
  const sentence = describeEntryIssue(
    "proposals" in issue ? { ...issue, proposals: [] } : issue,
    language?.messages,
  );
  return [{ field: places[field], kind: "issue", sentence, proposals }];
}

function submit(): void {
  document.querySelector<HTMLFormElement>(".reader__form")?.requestSubmit();
}
