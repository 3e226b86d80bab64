import type { TrackedDoses } from "@steelyard/core/dosing";
import { type CaseRecord, describeEvent } from "@steelyard/records/case";
import type { VNode } from "preact";
import { caseWords } from "../../messages/case-text.ts";
import { cases } from "../../messages/cases.ts";

interface Props {
  readonly record: CaseRecord;
  readonly tracked: TrackedDoses | undefined;
  /** The formulary in use, as events name it. */
  readonly now: string;
}

/** What somebody has to know who reads totals and times of doses that were marked while another formulary was in use. */
export function OtherFormularies({ record, tracked, now }: Props): VNode | null {
  const dosesBy = new Map<string, number>();
  for (const { versions } of record.doses) {
    if (versions.formulary === now) continue;
    const name = cases.byFormulary(versions.formulary, versions.formularySigned);
    dosesBy.set(name, (dosesBy.get(name) ?? 0) + 1);
  }
  const unknown = new Set(
    tracked?.warnings.flatMap(({ type, lineId }) => (type === "unknown-line" ? [lineId] : [])),
  );
  const untracked = record.doses.filter(({ given }) => unknown.has(given.lineId));
  if (dosesBy.size === 0 && untracked.length === 0) return null;
  return (
    <div class="due-list__warning" data-other-formularies>
      {[...dosesBy].map(([name, doses]) => (
        <p key={name}>{cases.otherFormulary(doses, name, now)}</p>
      ))}
      {untracked.map((event) => (
        <p key={event.id}>{cases.notTracked(describeEvent(event, caseWords))}</p>
      ))}
    </div>
  );
}
