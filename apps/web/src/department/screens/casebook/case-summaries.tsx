import type { CaseSummary } from "@steelyard/records/department";
import type { VNode } from "preact";
import { writeQuantity } from "../../../components/quantity/quantity.tsx";
import { writeError } from "../../components/write-percent.ts";
import { writeTime } from "../../components/write-time.ts";
import { words } from "../../messages/index.ts";
import { hashOf } from "../../state/department-screens.ts";

/** A line for each case, the latest first. */
export function CaseSummaries({ cases }: { readonly cases: readonly CaseSummary[] }): VNode {
  const { register } = words;
  return (
    <ul class="case-list">
      {cases.map((one) => (
        <li key={one.caseId}>
          <a href={hashOf("cases", one.caseId)}>
            <b class="case-list__code">{one.code === "" ? one.caseId.slice(0, 8) : one.code}</b>
            <span class="case-list__when">{writeTime(one.startedAt)}</span>
            {one.closedAt === undefined && <span class="case-list__running">{register.running}</span>}
            <span class="case-list__facts">{factsOf(one).join(" · ")}</span>
          </a>
        </li>
      ))}
    </ul>
  );
}

function factsOf({ estimateKg, low95Kg, high95Kg, laterKg, laterOn, doses }: CaseSummary): readonly string[] {
  const { register } = words;
  const estimated =
    estimateKg === undefined || low95Kg === undefined || high95Kg === undefined
      ? register.notEstimated
      : register.estimated(
          writeQuantity({ kg: estimateKg }),
          writeQuantity({ kg: low95Kg }),
          writeQuantity({ kg: high95Kg }),
        );
  const weighed =
    laterKg === undefined
      ? estimateKg === undefined
        ? undefined
        : register.weightDue
      : register.weighed(writeQuantity({ kg: laterKg }), laterOn ?? "");
  const off =
    laterKg === undefined || estimateKg === undefined
      ? undefined
      : register.off(writeError((100 * (estimateKg - laterKg)) / laterKg));
  return [estimated, doses > 0 ? register.doses(doses) : undefined, weighed, off].filter(
    (part) => part !== undefined,
  );
}
