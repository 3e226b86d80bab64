import type { DoseLine as Computed, DrawnVolume, SheetLine } from "@steelyard/core/dosing";
import { formatNumber, writeLabel } from "@steelyard/core/units";
import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { language } from "../../messages/language.ts";
import { sheetMessages } from "../../messages/sheet.ts";
import { FormularyText } from "../formulary-text/formulary-text.tsx";
import { Quantity, writeQuantity } from "../quantity/quantity.tsx";
import { DoseDetail } from "./dose-detail.tsx";
import { lineFlags } from "./line-flags.ts";

interface Props {
  readonly line: SheetLine;
  readonly draft: boolean;
  /** Sentences that stand above the sheet already. */
  readonly shared: ReadonlySet<string>;
  /** It stands in the short list at the top of the sheet. */
  readonly isPinned: boolean;
  /** Another published dose than the default one has been chosen. */
  readonly isChosen: boolean;
  readonly onPin: () => void;
  /** Computes another published dose; the default again where nothing is named. */
  readonly onChoose: (option: string | undefined) => void;
  /** On paper everything stands open. */
  readonly printing: boolean;
}

/** One use of one medicine: what to draw up at a glance, everything behind it when opened. */
export function DoseLine(props: Props): VNode {
  const { line, draft, shared, isChosen, printing } = props;
  // What is not open is not made: a key press has to fill the whole sheet anew within a blink.
  const [isOpen, setOpen] = useState(false);
  const { loud, quiet } = lineFlags(line, shared);
  return (
    <details class="dose-line" data-line={line.id} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        <span class="dose-line__medicine">
          <FormularyText>
            <b>{line.medicine}</b> {line.use}
          </FormularyText>
        </span>
        <span class="dose-line__draw">
          <Draw line={line} />
        </span>
        <span class="dose-line__dose">
          <Given line={line} />
          {isChosen && `, ${sheetMessages.otherDose(line.option.title)}`}
          {quiet.map((words) => `, ${words}`)}
          {draft && (
            <>
              {" "}
              <span class="dose-line__draft">{sheetMessages.draftLine}</span>
            </>
          )}
        </span>
        {line.unavailable === undefined && line.volume?.dilution !== undefined && (
          <span class="dose-line__flag">
            <Recipe dilution={line.volume.dilution} />
          </span>
        )}
        {line.unavailable === undefined && line.portions !== undefined && (
          <span class="dose-line__flag">{portionsText(line.portions)}</span>
        )}
        {loud.map((sentence, i) => (
          // By its place: most sentences only change their numbers, and stay the same element.
          <span key={`flag-${i + 1}`} class="dose-line__flag">
            {sentence}
          </span>
        ))}
      </summary>
      {(isOpen || printing) && <DoseDetail {...props} />}
    </details>
  );
}

/** What the hand does: millilitres of what, millilitres an hour, or joules. */
function Draw({ line }: { readonly line: SheetLine }): VNode {
  if (line.unavailable !== undefined) return <b class="dose-line__none">{sheetMessages.noDose}</b>;
  const { dose, volume, puffs, rate } = line;
  if (puffs !== undefined) {
    return (
      <>
        <b>
          <Quantity dose={{ amount: puffs.puffs, unit: "puff" }} />
        </b>
        <span>
          {sheetMessages.of} {writeLabel(puffs.strength, language?.numbers)}
        </span>
      </>
    );
  }
  if (rate !== undefined) {
    return (
      <>
        <b>
          <Quantity dose={{ amount: rate.mlPerH, unit: "mL", per: "h" }} />
        </b>
        <span>
          {sheetMessages.of} {writeLabel(rate.concentration, language?.numbers)}
        </span>
      </>
    );
  }
  if (volume === undefined || dose.unit === "mL") {
    return (
      <b>
        <Quantity dose={dose} />
      </b>
    );
  }
  return (
    <>
      <b>
        <Quantity dose={{ amount: volume.ml, unit: "mL" }} />
      </b>
      <span>
        {sheetMessages.of} {writeLabel(volume.strength, language?.numbers)}
      </span>
    </>
  );
}

/** What the child gets, by which way, and on which weight where that is not the total. */
function Given({ line }: { readonly line: SheetLine }): VNode {
  if (line.unavailable !== undefined) return <FormularyText>{line.route}</FormularyText>;
  const { dose, volume, rate, route, basis, basisKg, addedTo } = line;
  return (
    <>
      {rate !== undefined && `${sheetMessages.startAt} `}
      {(volume !== undefined || rate !== undefined) && dose.unit !== "mL" && (
        <>
          <Quantity dose={dose} />{" "}
        </>
      )}
      <FormularyText>{route}</FormularyText>
      {addedTo !== undefined && (
        <>
          , {sheetMessages.addedTo} <Quantity dose={{ amount: addedTo.ml, unit: "mL" }} />{" "}
          <FormularyText>{addedTo.diluent}</FormularyText>
        </>
      )}
      {basis !== "total" && (
        <>
          , {sheetMessages.on(sheetMessages.basis[basis])} <Quantity kg={basisKg} measured />
        </>
      )}
    </>
  );
}

/** A fluid in its parts, each with the rate of the pump: the first is what has to be set now. */
function portionsText(portions: NonNullable<Computed["portions"]>): string {
  const parts = portions.map(({ ml, overH, mlPerH }) =>
    sheetMessages.portion(
      writeQuantity({ dose: { amount: ml, unit: "mL" } }),
      formatNumber(overH, language?.numbers),
      writeQuantity({ dose: { amount: mlPerH, unit: "mL", per: "h" } }),
    ),
  );
  return `${parts.join(sheetMessages.thenPortion)}.`;
}

/** How to make the weaker mixture: it has to be done before anything is drawn up, so it never hides in the detail. */
function Recipe({ dilution }: { readonly dilution: NonNullable<DrawnVolume["dilution"]> }): VNode {
  const { takeMl, strength, addMl, diluent } = dilution;
  return (
    <>
      {sheetMessages.diluteFirst} <Quantity dose={{ amount: takeMl, unit: "mL" }} /> {sheetMessages.of}{" "}
      {writeLabel(strength, language?.numbers)}, {sheetMessages.add}{" "}
      <Quantity dose={{ amount: addMl, unit: "mL" }} /> {sheetMessages.of}{" "}
      <FormularyText>{diluent}</FormularyText>.
    </>
  );
}
