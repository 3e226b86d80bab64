import type { VNode } from "preact";
import type { Report } from "../../later/compute-report.ts";
import type { Later } from "../../later/later.ts";
import { messages } from "../../messages/index.ts";
import { FoldingGroup } from "./folding-group.tsx";

export const lookupGroups = ["equipment", "signs"] as const;

interface Props {
  readonly group: (typeof lookupGroups)[number];
  /** The ids to show; all where absent. */
  readonly only: readonly string[] | undefined;
  readonly isOpen: boolean;
  readonly printing: boolean;
  readonly later: Later | undefined;
  readonly report: Report | undefined;
  /** Absent while it can only be open. */
  readonly onTurn: (() => void) | undefined;
}

/** Equipment or normal signs: a heading that opens to their lines. */
export function LookupGroup({ group, only, isOpen, printing, later, report, onTurn }: Props): VNode {
  const name = messages.lookup.groups[group];
  return (
    <FoldingGroup id={group} name={name} isOpen={isOpen} printing={printing} onTurn={onTurn}>
      {() =>
        later === undefined || report === undefined ? (
          <p class="problem-group__coming">{messages.doseComing}</p>
        ) : (
          <later.LookupLines
            group={group}
            only={only}
            lookups={report.lookups()}
            printing={printing && isOpen}
          />
        )
      }
    </FoldingGroup>
  );
}
