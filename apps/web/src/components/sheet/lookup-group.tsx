import type { VNode } from "preact";
import type { Report } from "../../later/compute-report.ts";
import type { Later } from "../../later/later.ts";
import { messages } from "../../messages/index.ts";
import { FoldingGroup } from "./folding-group.tsx";

export const lookupGroups = ["equipment", "signs"] as const;

interface Props {
  readonly group: (typeof lookupGroups)[number];
  readonly isOpen: boolean;
  readonly printing: boolean;
  readonly later: Later | undefined;
  readonly report: Report | undefined;
  readonly onTurn: () => void;
}

/** Equipment or normal signs: a heading that opens to their lines. */
export function LookupGroup({ group, isOpen, printing, later, report, onTurn }: Props): VNode {
  const name = messages.lookup.groups[group];
  return (
    <FoldingGroup id={group} name={name} isOpen={isOpen} printing={printing} onTurn={onTurn}>
      {() =>
        later === undefined || report === undefined ? (
          <p class="problem-group__coming">{messages.doseComing}</p>
        ) : (
          <later.LookupLines group={group} lookups={report.lookups()} printing={printing && isOpen} />
        )
      }
    </FoldingGroup>
  );
}
