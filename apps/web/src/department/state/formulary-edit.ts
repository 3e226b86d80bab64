import { type Formulary, isInhaler, type Medicine, type Strength } from "@steelyard/core/dosing";
import { err, ok, type Result } from "@steelyard/core/result";
import { validateFormulary } from "@steelyard/formulary";
import {
  type DoseTableColumn,
  type DoseTableRow,
  doseTable,
  readDoseTable,
} from "@steelyard/formulary/ownership";

/** A formulary being changed: what it is made from, and exactly what was typed. */
export interface FormularyEdit {
  readonly base: Formulary;
  readonly version: string;
  /** By the key of the row. */
  readonly cells: Readonly<Record<string, Partial<Record<DoseTableColumn, string>>>>;
  /** By `medicine/strength`. */
  readonly strengths: Readonly<Record<string, string>>;
  /** `medicine/use` that stand on no sheet any more. */
  readonly removed: readonly string[];
}

export type FormularyEditEvent =
  | {
      readonly type: "cell-typed";
      readonly row: DoseTableRow;
      readonly column: DoseTableColumn;
      readonly text: string;
    }
  | { readonly type: "strength-typed"; readonly key: string; readonly text: string; readonly was: string }
  | { readonly type: "use-removed"; readonly key: string }
  | { readonly type: "use-back"; readonly key: string }
  | { readonly type: "version-typed"; readonly text: string }
  | { readonly type: "dropped" };

export function startEdit(base: Formulary): FormularyEdit {
  return { base, version: base.version, cells: {}, strengths: {}, removed: [] };
}

export function rowKey({ medicine, use, option, part }: DoseTableRow): string {
  return [medicine, use, option, part].join("/");
}

/** The next state of an edit; what is typed back to what it was is no change. */
export function updateEdit(edit: FormularyEdit, event: FormularyEditEvent): FormularyEdit {
  switch (event.type) {
    case "cell-typed": {
      const key = rowKey(event.row);
      const { [key]: before = {}, ...others } = edit.cells;
      const { [event.column]: _, ...rest } = before;
      const cells = event.text === event.row[event.column] ? rest : { ...rest, [event.column]: event.text };
      return { ...edit, cells: Object.keys(cells).length === 0 ? others : { ...others, [key]: cells } };
    }
    case "strength-typed": {
      const { [event.key]: _, ...others } = edit.strengths;
      return {
        ...edit,
        strengths: event.text === event.was ? others : { ...others, [event.key]: event.text },
      };
    }
    case "use-removed":
      return { ...edit, removed: [...edit.removed.filter((key) => key !== event.key), event.key] };
    case "use-back":
      return { ...edit, removed: edit.removed.filter((key) => key !== event.key) };
    case "version-typed":
      return { ...edit, version: event.text };
    case "dropped":
      return startEdit(edit.base);
  }
}

export function isChanged({ cells, strengths, removed }: FormularyEdit): boolean {
  return Object.keys(cells).length + Object.keys(strengths).length + removed.length > 0;
}

/** Something wrong with what was typed, at a cell or strength where it is one. */
export interface EditFault {
  readonly place: string;
  readonly message: string;
  readonly row?: string;
  readonly column?: DoseTableColumn;
  readonly strength?: string;
}

/** The formulary that an edit makes, or everything that is wrong with it. Checked whole, as a file would be. */
export function readEdit(edit: FormularyEdit): Result<Formulary, readonly EditFault[]> {
  const faults: EditFault[] = [];
  const kept = edit.base.medicines.flatMap((medicine): readonly Medicine[] => {
    const uses = medicine.uses.filter(({ id }) => !edit.removed.includes(`${medicine.id}/${id}`));
    if (uses.length === 0) return [];
    const needed = new Set(uses.flatMap((use) => use.strengths));
    // A strength that only a use that is gone was drawn from goes with it.
    const strengths = medicine.strengths
      .filter(({ id }) => uses.length === medicine.uses.length || needed.has(id))
      .map((strength) => withAmount(strength, `${medicine.id}/${strength.id}`, edit, faults));
    return [{ ...medicine, uses, strengths }];
  });
  if (faults.length > 0) return err(faults);
  const { signOff: _, ...rest } = edit.base;
  const cited = citedIn(kept);
  const base: Formulary = {
    ...rest,
    signed: false,
    version: edit.version.trim(),
    medicines: kept,
    sources: edit.base.sources.filter(({ id }) => cited.has(id)),
  };
  const rows = doseTable(base);
  const typed = rows.map((row) => ({ ...row, ...edit.cells[rowKey(row)] }));
  const isTyped = rows.some((row) => edit.cells[rowKey(row)] !== undefined);
  if (!isTyped) {
    const checked = validateFormulary(base);
    return checked.ok ? checked : err(checked.error);
  }
  const read = readDoseTable(base, typed);
  if (read.ok) return ok(read.value);
  return err(
    read.error.map(({ row: number, column, message }) => {
      const row = typed[number - 2];
      return {
        place: row === undefined ? "" : `${row.medicine}, ${row.use}, ${row.part}`,
        message,
        ...(row && { row: rowKey(row) }),
        ...(column && { column }),
      };
    }),
  );
}

function withAmount(strength: Strength, key: string, edit: FormularyEdit, faults: EditFault[]): Strength {
  const text = edit.strengths[key]?.trim();
  if (text === undefined) return strength;
  if (!/^\d+(\.\d+)?$/.test(text) || Number(text) === 0) {
    faults.push({
      place: key.replace("/", ", "),
      message: `must be a plain number such as 0.1, not "${text}"`,
      strength: key,
    });
    return strength;
  }
  const amount = Number(text);
  return isInhaler(strength) ? { ...strength, amountPerPuff: amount } : { ...strength, amountPerMl: amount };
}

/** Every source that anything in these medicines names. */
function citedIn(value: unknown): ReadonlySet<string> {
  const found = new Set<string>();
  const look = (part: unknown): void => {
    if (Array.isArray(part)) for (const each of part) look(each);
    else if (typeof part === "object" && part !== null) {
      for (const [name, each] of Object.entries(part)) {
        if (name === "sourceId" && typeof each === "string") found.add(each);
        else look(each);
      }
    }
  };
  look(value);
  return found;
}
