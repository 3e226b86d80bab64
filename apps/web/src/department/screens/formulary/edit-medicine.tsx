import { isInhaler, type Medicine, type Use } from "@steelyard/core/dosing";
import { formatQuantity } from "@steelyard/core/units";
import { type DoseTableColumn, type DoseTableRow, doseTable } from "@steelyard/formulary/ownership";
import type { VNode } from "preact";
import { useMemo } from "preact/hooks";
import { FormularyText } from "../../../components/formulary-text/formulary-text.tsx";
import { language } from "../../../messages/language.ts";
import { TextField } from "../../components/text-field.tsx";
import { words } from "../../messages/index.ts";
import {
  type EditFault,
  type FormularyEdit,
  type FormularyEditEvent,
  rowKey,
} from "../../state/formulary-edit.ts";

interface Props {
  readonly medicine: Medicine;
  readonly edit: FormularyEdit;
  readonly faults: readonly EditFault[];
  readonly send: (event: FormularyEditEvent) => void;
}

/** The strengths and doses of one medicine, to be typed over in place. */
export function EditMedicine({ medicine, edit, faults, send }: Props): VNode {
  const { formulary: said } = words;
  const rows = useMemo(() => doseTable({ ...edit.base, medicines: [medicine] }), [edit.base, medicine]);
  return (
    <>
      {medicine.strengths.length > 0 && (
        <section class="stack" aria-labelledby="strengths">
          <h2 id="strengths">{said.strengths}</h2>
          <div class="filters filters--hinted">
            {medicine.strengths.map((strength) => {
              const key = `${medicine.id}/${strength.id}`;
              const was = String(isInhaler(strength) ? strength.amountPerPuff : strength.amountPerMl);
              return (
                <TextField
                  key={key}
                  label={said.strengthAmount(strength.id)}
                  value={edit.strengths[key] ?? was}
                  inputMode="decimal"
                  maxLength={16}
                  unit={unitOf(strength.unit, isInhaler(strength) ? "puff" : "mL")}
                  hint={strength.container}
                  fault={faults.find((fault) => fault.strength === key)?.message}
                  onType={(text) => send({ type: "strength-typed", key, text, was })}
                />
              );
            })}
          </div>
        </section>
      )}
      <section class="stack" aria-labelledby="doses">
        <h2 id="doses">{said.doses}</h2>
        {medicine.uses.map((use) => (
          <EditUse
            key={use.id}
            medicine={medicine}
            use={use}
            rows={rows.filter((row) => row.use === use.id)}
            edit={edit}
            faults={faults}
            send={send}
          />
        ))}
      </section>
    </>
  );
}

interface UseProps extends Props {
  readonly use: Use;
  readonly rows: readonly DoseTableRow[];
}

function EditUse({ medicine, use, rows, edit, faults, send }: UseProps): VNode {
  const { formulary: said } = words;
  const key = `${medicine.id}/${use.id}`;
  const isOut = edit.removed.includes(key);
  return (
    <fieldset class="edit-use" data-use={key}>
      <legend>
        <FormularyText>
          {use.title}, {use.routes.join(", ")}
        </FormularyText>
      </legend>
      {isOut ? (
        <p class="row">
          <span class="tag tag--warn">{said.isOut}</span>
          <button class="button" type="button" onClick={() => send({ type: "use-back", key })}>
            {said.bringBackUse(use.title)}
          </button>
        </p>
      ) : (
        <>
          {rows.map((row) => (
            <EditRow
              key={rowKey(row)}
              row={row}
              typed={edit.cells[rowKey(row)] ?? {}}
              faults={faults.filter((fault) => fault.row === rowKey(row))}
              send={send}
            />
          ))}
          <p>
            <button class="button" type="button" onClick={() => send({ type: "use-removed", key })}>
              {said.removeUse(use.title)}
            </button>
          </p>
        </>
      )}
    </fieldset>
  );
}

interface RowProps {
  readonly row: DoseTableRow;
  readonly typed: Partial<Record<DoseTableColumn, string>>;
  readonly faults: readonly EditFault[];
  readonly send: Props["send"];
}

const columns = ["amount", "low", "high", "step", "minimum", "maximum"] as const;

function EditRow({ row, typed, faults, send }: RowProps): VNode {
  const { formulary: said } = words;
  const perKg = row.kind === "infusion" ? row.per : "kg";
  const unitFor: Readonly<Record<(typeof columns)[number], string>> = {
    amount: unitOf(row.unit, row.per),
    low: unitOf(row.unit, perKg),
    high: unitOf(row.unit, perKg),
    step: unitOf(row.unit, perKg),
    minimum: unitOf(typed.minimum_unit ?? (row.minimum_unit || row.unit), ""),
    maximum: unitOf(typed.maximum_unit ?? (row.maximum_unit || row.unit), ""),
  };
  const whole = faults.filter(({ column }) => column === undefined || !isShown(row, column));
  return (
    <div class="edit-row">
      <p>
        <FormularyText>{row.option_title}</FormularyText>{" "}
        <span class="soft">
          {[partWords(row), bandWords(row), basisWords(row)].filter((part) => part !== "").join(", ")}
        </span>
      </p>
      <div class="filters edit-row__cells">
        {columns
          .filter((column) => isShown(row, column))
          .map((column) => (
            <TextField
              key={column}
              label={said.columns[column]}
              value={typed[column] ?? row[column]}
              inputMode="decimal"
              maxLength={16}
              unit={unitFor[column]}
              fault={faults.find((fault) => fault.column === column)?.message}
              onType={(text) => {
                send({ type: "cell-typed", row, column, text });
                // A limit and its unit come and go together; a new one is in the unit of the dose.
                if (column === "minimum" || column === "maximum") {
                  const unit = row[`${column}_unit`] || row.unit;
                  const own = text.trim() === "" ? "" : unit;
                  send({ type: "cell-typed", row, column: `${column}_unit`, text: own });
                }
              }}
            />
          ))}
      </div>
      {whole.map(({ message }) => (
        <p key={message} class="text-field__fault">
          <FormularyText>{message}</FormularyText>
        </p>
      ))}
    </div>
  );
}

/** What this kind of rule has; a limit may be added where the rule can hold one. */
function isShown(row: DoseTableRow, column: DoseTableColumn): boolean {
  switch (column) {
    case "amount":
      return true;
    case "low":
    case "high":
    case "step":
      return row[column] !== "";
    case "maximum":
      return row.kind !== "fixed" && !(row.kind.includes("bands") && row.per === "");
    case "minimum":
      return row.per === "kg" || row.per === "m2" || row.minimum !== "";
    default:
      return false;
  }
}

/** "micrograms/kg", without the number. */
function unitOf(unit: string, per: string): string {
  const written = formatQuantity(
    { amount: 2, unit, ...(per !== "" && { per }) } as Parameters<typeof formatQuantity>[0],
    language?.numbers,
  );
  return written.slice(written.indexOf("\u00a0") + 1);
}

function partWords({ part }: DoseTableRow): string {
  const { parts } = words.formulary;
  const number = Number(part.split(" ")[1] ?? "");
  if (part.startsWith("band")) return parts.band(number);
  if (part.startsWith("later")) return parts.later(number + 1);
  if (part.startsWith("tier")) return parts.tier(number);
  return part === "first" ? "" : parts.unknown;
}

function bandWords({ band_low: low, band_high: high, band_unit: band }: DoseTableRow): string {
  const { formulary } = words;
  if (low === "" && high === "") return "";
  const unit = band === "months" ? formulary.months : "kg";
  return high === "" ? formulary.bandFrom(low, unit) : formulary.bandTo(low === "" ? "0" : low, high, unit);
}

function basisWords({ basis, per }: DoseTableRow): string {
  const { formulary } = words;
  if (per === "m2") return formulary.perM2;
  return basis === "" ? "" : ((formulary.ofBasis as Readonly<Record<string, string>>)[basis] ?? basis);
}
