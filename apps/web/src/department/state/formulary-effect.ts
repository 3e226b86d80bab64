import { computeSheet, type Formulary, type SheetLine } from "@steelyard/core/dosing";
import { centimetres, kilograms, months } from "@steelyard/core/units";

/** An invented child: near the middle for its age, so that ideal and total weight are the same. */
export interface ExampleChild {
  readonly kg: number;
  readonly ageMonths: number;
  readonly lengthCm: number;
}

export const exampleChildren: readonly ExampleChild[] = [
  { kg: 4, ageMonths: 1, lengthCm: 54 },
  { kg: 10, ageMonths: 12, lengthCm: 75 },
  { kg: 20, ageMonths: 72, lengthCm: 116 },
  { kg: 40, ageMonths: 144, lengthCm: 150 },
];

/** One use for every example child, by two formularies; absent where a formulary has no such use. */
export interface EffectRow {
  readonly id: string;
  readonly medicine: string;
  readonly use: string;
  readonly cells: readonly {
    readonly before?: SheetLine;
    readonly after?: SheetLine;
    readonly differs: boolean;
  }[];
}

/** What another formulary gives example children, for some medicines or all. */
export function effectOn(
  before: Formulary,
  after: Formulary,
  medicineIds?: readonly string[],
): readonly EffectRow[] {
  const [old, fresh] = [before, after].map((formulary) => sheetsOf(formulary, medicineIds)) as [
    Sheets,
    Sheets,
  ];
  const ids = [...new Set([...old.ids, ...fresh.ids])];
  return ids.map((id) => {
    const cells = exampleChildren.map((_, index) => {
      const [was, is] = [old.lines[index]?.get(id), fresh.lines[index]?.get(id)];
      return { ...(was && { before: was }), ...(is && { after: is }), differs: givenOf(was) !== givenOf(is) };
    });
    const [first] = cells;
    const named = first?.after ?? first?.before;
    return { id, medicine: named?.medicine ?? "", use: named?.use ?? "", cells };
  });
}

export function isEffect(row: EffectRow): boolean {
  return row.cells.some(({ differs }) => differs);
}

interface Sheets {
  readonly ids: readonly string[];
  readonly lines: readonly ReadonlyMap<string, SheetLine>[];
}

function sheetsOf(formulary: Formulary, medicineIds: readonly string[] | undefined): Sheets {
  const medicines =
    medicineIds === undefined
      ? formulary.medicines
      : formulary.medicines.filter(({ id }) => medicineIds.includes(id));
  const part: Formulary = { ...formulary, medicines };
  const lines = exampleChildren.map(({ kg, ageMonths, lengthCm }) => {
    const weight = kilograms(kg);
    const sheet = computeSheet({
      formulary: part,
      weights: { totalKg: weight, idealKg: weight, adjustedKg: weight, leanKg: weight },
      ageMonths: months(ageMonths),
      lengthCm: centimetres(lengthCm),
    });
    return new Map(sheet.map((line) => [line.id, line]));
  });
  return { ids: [...(lines[0]?.keys() ?? [])], lines };
}

/** What is given, in every part that a hand carries out: dose, volume, puffs, rate, syringe, later doses. */
function givenOf(line: SheetLine | undefined): string {
  if (line === undefined) return "";
  if (line.unavailable !== undefined) return JSON.stringify(line.unavailable);
  const { dose, volume, puffs, rate, portions, preparations, addedTo, further } = line;
  const made = preparations?.map(({ working: _, ...given }) => given);
  const later = further.map(({ working: _, warnings: __, ...given }) => given);
  return JSON.stringify({ dose, volume, puffs, rate, portions, made, addedTo, later });
}
