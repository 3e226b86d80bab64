import type { Proposal } from "@steelyard/core/entry";
import { describeProposal } from "@steelyard/core/wording";
import type { VNode } from "preact";
import { messages } from "../../messages/index.ts";
import { language } from "../../messages/language.ts";
import type { FieldMessage } from "../../state/field-message.ts";

interface Props {
  readonly items: readonly FieldMessage[];
  /** `field` is the one the sentence stands beside. */
  readonly onAccept: (proposal: Proposal, field: string) => void;
}

/** The id under which a field finds what is wrong with it. */
export function messageId(field: string): string {
  return `${field}-message`;
}

/** What is doubtful about the numbers, each with its likely corrections as buttons; nothing is corrected unasked. */
export function FieldMessages({ items, onAccept }: Props): VNode {
  return (
    <div class="field-messages" aria-live="polite">
      {items.map(({ field, kind, sentence, proposals }) => (
        <div
          key={`${field}${sentence}`}
          class={`field-messages__one${kind === "notice" ? " field-messages__one--notice" : ""}`}
        >
          <p id={kind === "issue" ? messageId(field) : undefined}>{sentence}</p>
          {proposals.length > 0 && (
            <div class="field-messages__ways">
              {proposals.map((proposal) => (
                <button
                  key={describeProposal(proposal, language?.messages)}
                  class="button"
                  type="button"
                  onClick={() => onAccept(proposal, field)}
                >
                  {messages.take(describeProposal(proposal, language?.messages))}
                </button>
              ))}
            </div>
          )}
        </div>
      ))}
    </div>
  );
}
