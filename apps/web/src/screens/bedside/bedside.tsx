import type { ChildReport } from "@steelyard/core/child";
import { describeBodyWarning, describeRests } from "@steelyard/core/wording";
import type { VNode } from "preact";
import { Cautions, type OfflineState } from "../../components/cautions/cautions.tsx";
import { DraftBanner } from "../../components/draft-banner/draft-banner.tsx";
import { FirstSteps } from "../../components/first-steps/first-steps.tsx";
import { Masthead } from "../../components/masthead/masthead.tsx";
import { writeQuantity } from "../../components/quantity/quantity.tsx";
import { Sheet } from "../../components/sheet/sheet.tsx";
import { WeightCard } from "../../components/weight-card/weight-card.tsx";
import { messages } from "../../messages/index.ts";
import { type BedsideState, isTouched } from "../../state/bedside-state.ts";
import type { BedsideView } from "../../state/read-bedside.ts";
import type { BedsideEvent } from "../../state/update.ts";
import { versions } from "../../state/versions.ts";
import { BedsideEntry } from "./bedside-entry.tsx";

interface Props {
  readonly state: BedsideState;
  readonly view: BedsideView;
  readonly offline: OfflineState;
  readonly printing: boolean;
  readonly send: (event: BedsideEvent) => void;
}

/** The one screen: measurements in, weight and doses out. */
export function Bedside({ state, view, offline, printing, send }: Props): VNode {
  const { child, refusal } = view;
  return (
    <>
      <DraftBanner />
      <div class="bedside">
        <Masthead
          canStartOver={isTouched(state.texts)}
          canBringBack={state.setAside !== undefined && !isTouched(state.texts)}
          onNextChild={() => send({ type: "next-child" })}
          onBringBack={() => send({ type: "brought-back" })}
        />
        <main class="bedside__main">
          <div class="bedside__child">
            <BedsideEntry state={state} items={view.messages} send={send} />
            <WeightCard
              weight={child === undefined ? undefined : { ...child.weight, components: view.components }}
              refusal={refusal}
              rests={child === undefined ? undefined : describeRests(child.weight.rests)}
              warnings={child?.warnings.map((warning) => describeBodyWarning(warning)) ?? []}
            />
          </div>
          <div class="bedside__sheet">
            {child === undefined ? (
              <FirstSteps />
            ) : (
              <Sheet lines={child.sheet} draft={!child.versions.formularySigned} printing={printing} />
            )}
            <Cautions versions={versions} offline={offline} />
          </div>
        </main>
        <output class="unseen">{child !== undefined && state.typing === undefined && spoken(child)}</output>
      </div>
    </>
  );
}

/** What a screen reader says once the fingers rest. */
function spoken({ weight, sheet }: ChildReport): string {
  return messages.spoken({
    total: writeQuantity({ kg: weight.totalKg }),
    range: writeQuantity({ fromKg: weight.low95Kg, toKg: weight.high95Kg }),
    ideal: weight.idealKg === undefined ? undefined : writeQuantity({ kg: weight.idealKg }),
    doses: sheet.filter(({ unavailable }) => unavailable === undefined).length,
  });
}
