import type { SheetLine } from "@steelyard/core/dosing";
import { formatNumber } from "@steelyard/core/units";
import { describeUnavailable } from "@steelyard/core/wording";
import type { VNode } from "preact";
import { FormularyText } from "../../components/formulary-text/formulary-text.tsx";
import { writeQuantity } from "../../components/quantity/quantity.tsx";
import { language } from "../../messages/language.ts";
import { words } from "../messages/index.ts";
import { type EffectRow, exampleChildren, isEffect } from "../state/formulary-effect.ts";

interface Props {
  readonly rows: readonly EffectRow[];
  /** Leaves out uses that stay as they are. */
  readonly onlyChanges?: boolean;
}

/** Old dose and new dose of example children, use by use; what changes stands out in words and weight, not in colour alone. */
export function EffectTable({ rows, onlyChanges = false }: Props): VNode {
  const { formulary } = words;
  const shown = onlyChanges ? rows.filter(isEffect) : rows;
  if (shown.length === 0) return <p>{formulary.noEffect}</p>;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls has to be reached by keys
    <section class="scroll" tabIndex={0} aria-label={formulary.effectTitle}>
      <table class="effect">
        <thead>
          <tr>
            <th scope="col">{formulary.line}</th>
            {exampleChildren.map((child) => (
              <th key={child.kg} scope="col">
                {formulary.child(writeQuantity({ kg: child.kg, measured: true }), writeAge(child.ageMonths))}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {shown.map((row) => (
            <tr key={row.id} data-effect={row.id}>
              <th scope="row">
                <FormularyText>
                  {row.medicine}, {row.use}
                </FormularyText>
              </th>
              {row.cells.map(({ before, after, differs }, index) => (
                <td key={exampleChildren[index]?.kg}>
                  {differs ? (
                    <b class="effect__changed">
                      {formulary.changedTo(
                        before === undefined ? formulary.isNew : givenWords(before),
                        after === undefined ? formulary.gone : givenWords(after),
                      )}
                    </b>
                  ) : (
                    after !== undefined && <span class="soft">{givenWords(after)}</span>
                  )}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function writeAge(ageMonths: number): string {
  const { months } = words.formulary;
  return `${formatNumber(ageMonths, language?.numbers)}\u00a0${months}`;
}

/** "100 micrograms, 1 mL" of one line. */
function givenWords(line: SheetLine): string {
  if (line.unavailable !== undefined) return describeUnavailable(line.unavailable, language?.dosing);
  const { dose, volume, puffs, rate, preparations, further } = line;
  const [made] = preparations ?? [];
  return [
    writeQuantity({ dose }),
    volume && writeQuantity({ dose: { amount: volume.ml, unit: "mL" } }),
    puffs && writeQuantity({ dose: { amount: puffs.puffs, unit: "puff" } }),
    rate && writeQuantity({ dose: { amount: rate.mlPerH, unit: "mL", per: "h" } }),
    made && !rate && writeQuantity({ dose: { amount: made.mlPerH, unit: "mL", per: "h" } }),
    ...further.map((next) => writeQuantity({ dose: next.dose })),
  ]
    .filter((part) => typeof part === "string")
    .join(", ");
}
