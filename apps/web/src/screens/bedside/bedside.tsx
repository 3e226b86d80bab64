import type { EstimatedChild } from "@steelyard/core/body";
import type { ComponentChildren, VNode } from "preact";
import { FirstSteps } from "../../components/first-steps/first-steps.tsx";
import { writeQuantity } from "../../components/quantity/quantity.tsx";
import { Sheet } from "../../components/sheet/sheet.tsx";
import { WeightCard } from "../../components/weight-card/weight-card.tsx";
import { WeightRemarks } from "../../components/weight-card/weight-remarks.tsx";
import type { Report } from "../../later/compute-report.ts";
import type { Later } from "../../later/later.ts";
import { messages } from "../../messages/index.ts";
import type { BedsideState } from "../../state/bedside-state.ts";
import type { FieldMessage } from "../../state/field-message.ts";
import { formularyIndex } from "../../state/formulary-index.ts";
import type { BedsideView } from "../../state/read-bedside.ts";
import type { BedsideEvent } from "../../state/update.ts";
import { BedsideEntry } from "./bedside-entry.tsx";

interface Props {
  readonly state: BedsideState;
  readonly view: BedsideView;
  /** Every sentence about the fields. */
  readonly items: readonly FieldMessage[];
  /** The part behind the first screen; absent while it is on its way. */
  readonly later: Later | "failed" | undefined;
  readonly report: Report | undefined;
  /** What has been done for this child, below the weight. */
  readonly log?: ComponentChildren;
  readonly printing: boolean;
  readonly send: (event: BedsideEvent) => void;
  readonly onReload: () => void;
}

/** The first screen: measurements in, weight and doses out. */
export function Bedside({ state, view, items, later, report, log, printing, send, onReload }: Props): VNode {
  const { child, refusal } = view;
  return (
    <div class="bedside">
      <div class="bedside__child">
        <WeightCard child={child} />
        <BedsideEntry
          state={state}
          items={items}
          next={report?.next}
          later={typeof later === "object" ? later : undefined}
          send={send}
        />
        <WeightRemarks child={child} refusal={refusal} />
        {log}
      </div>
      <div class="bedside__sheet">
        {child === undefined ? (
          <FirstSteps />
        ) : (
          <Sheet
            index={state.formulary?.index ?? formularyIndex}
            later={later}
            report={report}
            search={state.search}
            turned={state.turned}
            pinned={state.pinned}
            choices={state.choices}
            printing={printing}
            send={send}
            onReload={onReload}
          />
        )}
      </div>
      <output class="unseen">{child !== undefined && state.typing === undefined && spoken(child)}</output>
    </div>
  );
}

/** What a screen reader says once the fingers rest. */
function spoken({ estimate, weights: { idealKg } }: EstimatedChild): string {
  return messages.spoken({
    total: writeQuantity({ kg: estimate.totalKg }),
    range: writeQuantity({ fromKg: estimate.low95Kg, toKg: estimate.high95Kg }),
    ideal: idealKg === undefined ? undefined : writeQuantity({ kg: idealKg }),
  });
}
