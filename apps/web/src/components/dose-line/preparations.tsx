import type { PreparedInfusion } from "@steelyard/core/dosing";
import { formatNumber, writeLabel } from "@steelyard/core/units";
import type { VNode } from "preact";
import { messages } from "../../messages/index.ts";
import { language } from "../../messages/language.ts";
import { sheetMessages } from "../../messages/sheet.ts";
import { FormularyText } from "../formulary-text/formulary-text.tsx";
import { Quantity } from "../quantity/quantity.tsx";
import { pumpRates, threeFigures } from "./pump-rates.ts";

/** Every way to make up the syringe of an infusion, the default one first. */
export function Preparations({
  preparations,
}: {
  readonly preparations: readonly PreparedInfusion[];
}): VNode {
  return (
    <ul class="preparations">
      {preparations.map(
        ({
          id,
          kind,
          amount,
          totalMl,
          diluent,
          concentration,
          mlPerH,
          lowMlPerH,
          highMlPerH,
          dosePerMlPerH,
          lastsH,
        }) => (
          <li key={id}>
            <p>
              <b>{sheetMessages.preparationKind[kind]}</b>: <Quantity dose={amount} />{" "}
              {sheetMessages.madeUpTo} <Quantity dose={{ amount: totalMl, unit: "mL" }} />{" "}
              {sheetMessages.with} <FormularyText>{diluent}</FormularyText> (
              {writeLabel(concentration, language?.numbers)})
            </p>
            <p>
              {sheetMessages.startAt} <Quantity dose={perHour(mlPerH)} />, {sheetMessages.rateRange}{" "}
              <Quantity dose={perHour(lowMlPerH)} /> {messages.to} <Quantity dose={perHour(highMlPerH)} />.{" "}
              <Quantity dose={perHour(1)} /> = <Quantity dose={dosePerMlPerH} />.{" "}
              {sheetMessages.lasts(formatNumber(lastsH, language?.numbers))}
            </p>
            <RateTable lowMlPerH={lowMlPerH} highMlPerH={highMlPerH} dosePerMlPerH={dosePerMlPerH} />
          </li>
        ),
      )}
    </ul>
  );
}

/** What each setting of the pump gives, over the whole range. */
function RateTable({
  lowMlPerH,
  highMlPerH,
  dosePerMlPerH,
}: Pick<PreparedInfusion, "lowMlPerH" | "highMlPerH" | "dosePerMlPerH">): VNode {
  const rates = pumpRates({ lowMlPerH, highMlPerH });
  return (
    <table class="rate-table">
      <thead>
        <tr>
          <th scope="col">{sheetMessages.pumpRate}</th>
          <th scope="col">{sheetMessages.doseGiven}</th>
        </tr>
      </thead>
      <tbody>
        {rates.map((mlPerH) => (
          <tr key={mlPerH}>
            <td>
              <Quantity dose={perHour(mlPerH)} />
            </td>
            <td>
              <Quantity dose={{ ...dosePerMlPerH, amount: threeFigures(mlPerH * dosePerMlPerH.amount) }} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function perHour(ml: number): { readonly amount: number; readonly unit: "mL"; readonly per: "h" } {
  return { amount: ml, unit: "mL", per: "h" };
}
