import type { VNode } from "preact";
import { cases } from "../../messages/cases.ts";
import type { DeskState } from "../../state/case-desk.ts";

interface Props {
  readonly desk: DeskState;
  readonly onRetry: () => void;
}

/** What a person must know about where the cases are kept; nothing while all is well. */
export function DeskRemarks({ desk, onRetry }: Props): VNode {
  const { keeps, trouble, lock, otherTabs, unreadable } = desk;
  return (
    <div class="desk-remarks">
      {keeps === "memory" && (
        <div class="desk-remarks__loud" role="alert">
          <p>{cases.keptMemory[trouble ?? "refused"]}</p>
          <button class="button" type="button" onClick={onRetry}>
            {cases.tryAgain}
          </button>
        </div>
      )}
      {unreadable > 0 && <p class="desk-remarks__loud">{cases.unreadable(unreadable)}</p>}
      {lock === "locked" && <p class="desk-remarks__quiet">{cases.locked}</p>}
      {otherTabs && <p class="desk-remarks__quiet">{cases.otherTabs}</p>}
    </div>
  );
}
