import type { DoseLine, SheetLine, WorkingStep } from "@steelyard/core/dosing";
import { formatNumber } from "@steelyard/core/units";
import { describeDosingWarning, describeRobustnessOmitted, describeWorking } from "@steelyard/core/wording";
import type { ComponentChildren, VNode } from "preact";
import { messages } from "../../messages/index.ts";
import { language } from "../../messages/language.ts";
import { sheetMessages } from "../../messages/sheet.ts";
import { GiveButton } from "../case-log/give-button.tsx";
import { FormularyText } from "../formulary-text/formulary-text.tsx";
import { Quantity } from "../quantity/quantity.tsx";
import { Preparations } from "./preparations.tsx";

interface Props {
  readonly line: SheetLine;
  readonly isPinned: boolean;
  readonly isChosen: boolean;
  readonly onPin: () => void;
  readonly onChoose: (option: string | undefined) => void;
}

/** What stands behind a line: arithmetic, how to give it, what to watch, and where it comes from. */
export function DoseDetail({ line, isPinned, isChosen, onPin, onChoose }: Props): VNode {
  const { guidance, alternatives, optionReason, sources } = line;
  return (
    <div class="dose-detail">
      {line.unavailable === undefined && <GiveButton line={line} />}
      {line.working.length > 0 && (
        <Part title={sheetMessages.working}>
          <Steps steps={line.working} />
        </Part>
      )}
      {line.unavailable === undefined && <Certainty line={line} />}
      <Notes title={sheetMessages.notes} notes={notes(line)} isOwn />
      {line.unavailable === undefined && <Further line={line} />}
      {line.unavailable === undefined && line.preparations !== undefined && (
        <Part title={sheetMessages.preparations}>
          <Preparations preparations={line.preparations} />
        </Part>
      )}
      <Part title={sheetMessages.given}>
        <p>
          <FormularyText>{guidance.administration}</FormularyText>
        </p>
        {guidance.repeat !== undefined && (
          <p>
            <FormularyText>{guidance.repeat}</FormularyText>
          </p>
        )}
      </Part>
      <Notes title={sheetMessages.contraindications} notes={guidance.contraindications} />
      <Notes title={sheetMessages.cautions} notes={guidance.cautions} />
      <Notes title={sheetMessages.incompatibilities} notes={guidance.incompatibilities} />
      <Notes title={sheetMessages.monitoring} notes={guidance.monitoring} />
      {alternatives.length > 0 && (
        <Part title={sheetMessages.alternatives}>
          <p>{sheetMessages.chosen(line.option.title, isChosen ? undefined : optionReason)}</p>
          <div class="dose-detail__ways screen-only">
            {isChosen && (
              <button class="chip" type="button" onClick={() => onChoose(undefined)}>
                {sheetMessages.defaultDose}
              </button>
            )}
            {alternatives.map(({ id, title }) => (
              <button key={id} class="chip" type="button" onClick={() => onChoose(id)}>
                <FormularyText>{title}</FormularyText>
              </button>
            ))}
          </div>
          <ul class="print-only">
            {alternatives.map(({ id, title }) => (
              <li key={id}>
                <FormularyText>{title}</FormularyText>
              </li>
            ))}
          </ul>
        </Part>
      )}
      <Part title={sheetMessages.sources}>
        <ul>
          {sources.map(({ sourceId, title, locator, verification }) => (
            <li key={`${sourceId}${locator}`}>
              {title}
              {locator !== undefined && `, ${locator}`} <b>({sheetMessages.verification[verification]})</b>
            </li>
          ))}
        </ul>
      </Part>
      <button class="chip dose-detail__pin screen-only" type="button" onClick={onPin}>
        {isPinned ? sheetMessages.unpin : sheetMessages.pin}
      </button>
    </div>
  );
}

/** What neither the closed line nor the working says in full. */
function notes({ warnings }: SheetLine): readonly string[] {
  const said = warnings.filter(
    ({ type }) => type === "bases-differ" || type === "age-needed" || type === "neonate",
  );
  return [...new Set(said.map((warning) => describeDosingWarning(warning, language?.dosing)))];
}

function Part({ title, children }: { readonly title: string; readonly children: ComponentChildren }): VNode {
  return (
    <section>
      <h4>{title}</h4>
      {children}
    </section>
  );
}

function Steps({ steps }: { readonly steps: readonly WorkingStep[] }): VNode {
  return (
    <ol class="dose-detail__steps">
      {steps.map((step) => (
        <li key={JSON.stringify(step)}>{describeWorking(step, language?.dosing)}</li>
      ))}
    </ol>
  );
}

function Further({ line }: { readonly line: DoseLine }): VNode | null {
  if (line.further.length === 0) return null;
  return (
    <Part title={sheetMessages.further}>
      {line.further.map((further, i) => (
        <Steps key={`further-${i + 1}`} steps={further.working} />
      ))}
    </Part>
  );
}

/** How likely the dose is right for the child's true weight, or why that is no question here. */
function Certainty({ line }: { readonly line: DoseLine }): VNode {
  const { robustness, robustnessOmitted, dose } = line;
  const perKg = (amount: number): VNode => <Quantity dose={{ amount, unit: dose.unit, per: "kg" }} />;
  return (
    <Part title={sheetMessages.certainty}>
      {robustness !== undefined && (
        <p>
          {sheetMessages.accepted} {formatNumber(robustness.acceptedLowPerKg, language?.numbers)}{" "}
          {messages.to} {perKg(robustness.acceptedHighPerKg)}.{" "}
          {sheetMessages.outside(percent(robustness.probabilityOutside))}
        </p>
      )}
      {robustnessOmitted !== undefined && (
        <p>{describeRobustnessOmitted(robustnessOmitted, language?.dosing)}</p>
      )}
    </Part>
  );
}

function percent(probability: number): string {
  return probability < 0.01
    ? sheetMessages.underOne
    : formatNumber(Math.round(probability * 100), language?.numbers);
}

function Notes({
  title,
  notes,
  isOwn = false,
}: {
  readonly title: string;
  readonly notes: readonly string[];
  /** The sentences are the page's own; otherwise the formulary's. */
  readonly isOwn?: boolean;
}): VNode | null {
  if (notes.length === 0) return null;
  return (
    <Part title={title}>
      <ul>
        {notes.map((note) => (
          <li key={note}>{isOwn ? note : <FormularyText>{note}</FormularyText>}</li>
        ))}
      </ul>
    </Part>
  );
}
