import { type DecimalMark, HUMAN_LIMITS, readEntry } from "@steelyard/core/entry";
import type { StudyTable, WordColumn } from "../table/study-table.ts";
import type { ColumnMapping } from "./column-mapping.ts";
import { CodeStore, NumberStore } from "./column-store.ts";
import { cellNumber, isMissingCell } from "./read-cell.ts";
import { isQuantity, isWord, QUANTITY_FIELDS, STUDY_UNIT, WORD_FIELDS } from "./study-field.ts";
import { FATES, FlowCounter } from "./study-flow.ts";
import { unitFactor } from "./unit-factor.ts";

interface NumberColumn {
  readonly column: string;
  readonly index: number;
  readonly name: string;
  readonly entry: keyof typeof HUMAN_LIMITS;
  readonly unit: string;
  readonly factor: number;
  readonly alsoFactor: number;
  readonly low: number;
  readonly high: number;
  readonly store: NumberStore;
}

interface CodeColumn {
  readonly column: string;
  readonly index: number;
  readonly name: string;
  /** Known words, or the words met so far. */
  readonly codeOf: Map<string, number>;
  readonly levels: string[];
  readonly open: boolean;
  readonly store: CodeStore;
}

/** Standing height + 0.7 cm is the lying length. @source who-anthro */
const LYING_LESS_STANDING_CM = 0.7;
/** A stature of unknown stance was taken lying under these. @source who-anthro */
const LYING_BELOW = { ageMonths: 24, cm: 87 } as const;
const [INCLUDED, TOO_LONG, WEIGHT_MISSING, WEIGHT_UNREADABLE, WEIGHT_IMPOSSIBLE, NOTHING_TO_GO_BY, OEDEMA] =
  FATES.map((_, i) => i) as [number, number, number, number, number, number, number];

/** Takes rows of cells, keeps them as columns and counts the fate of each. */
export class TableBuilder {
  readonly counter: FlowCounter = new FlowCounter();
  private readonly numbers: readonly NumberColumn[];
  private readonly codes: readonly CodeColumn[];
  private readonly width: number;
  private readonly decimalMark: DecimalMark;
  private readonly lengthCm: NumberStore | undefined;
  private readonly rowNumbers: CodeStore;
  private readonly fates: CodeStore;
  private readonly values: Float64Array;
  private readonly places: Readonly<
    Record<"weightKg" | "lengthCm" | "standingHeightCm" | "statureCm" | "ageMonths", number>
  >;
  private readonly stance: CodeColumn | undefined;
  private readonly oedema: CodeColumn | undefined;
  private row = 0;
  private weightFate = WEIGHT_MISSING;

  constructor(given: { mapping: readonly ColumnMapping[]; decimalMark: DecimalMark; expectedRows: number }) {
    const { mapping, expectedRows } = given;
    this.decimalMark = given.decimalMark;
    this.width = mapping.length;
    this.numbers = mapping.flatMap((own, index) => numberColumn(own, index, expectedRows));
    this.codes = mapping.flatMap((own, index) => codeColumn(own, index, expectedRows));
    this.values = new Float64Array(this.numbers.length);
    const place = (name: string): number => this.numbers.findIndex((own) => own.name === name);
    this.places = {
      weightKg: place("weightKg"),
      lengthCm: place("lengthCm"),
      standingHeightCm: place("standingHeightCm"),
      statureCm: place("statureCm"),
      ageMonths: place("ageMonths"),
    };
    const derives = this.places.standingHeightCm >= 0 || this.places.statureCm >= 0;
    this.lengthCm = derives ? new NumberStore(expectedRows) : undefined;
    this.rowNumbers = new CodeStore(expectedRows);
    this.fates = new CodeStore(expectedRows);
    this.stance = this.codes.find(({ name }) => name === "stance");
    this.oedema = this.codes.find(({ name }) => name === "oedema");
  }

  take(cells: readonly string[]): void {
    if (cells.length === 1 && isBlank(cells[0] as string)) {
      this.counter.blankLines++;
      return;
    }
    const row = ++this.row;
    if (cells.length !== this.width && !this.fitsWidth(cells, row)) return;
    this.weightFate = WEIGHT_MISSING;
    for (let i = 0; i < this.numbers.length; i++) {
      const own = this.numbers[i] as NumberColumn;
      const value = this.readNumber(own, cells[own.index] ?? "", row);
      this.values[i] = value;
      own.store.push(value);
    }
    let stance = -1;
    let oedema = -1;
    for (const own of this.codes) {
      const code = this.readCode(own, cells[own.index] ?? "", row);
      if (own === this.stance) stance = code;
      if (own === this.oedema) oedema = code;
      own.store.push(code);
    }
    const lengthCm = this.lyingLength(stance);
    this.lengthCm?.push(lengthCm);
    this.rowNumbers.push(row);
    const fate = this.fateOf(lengthCm, oedema);
    this.fates.push(fate);
    this.counter.count(fate, row);
  }

  /** All rows that fit their header, and the fate of each as its place in `FATES`. */
  done(): { readonly table: StudyTable; readonly fates: Int32Array } {
    const numbers = new Map(this.numbers.map(({ name, store }) => [name, store.done()]));
    if (this.lengthCm !== undefined) numbers.set("lengthCm", this.lengthCm.done());
    const words = new Map(
      this.codes.map(({ name, levels, store }): [string, WordColumn] => [
        name,
        { codes: store.done(), levels },
      ]),
    );
    const fates = this.fates.done();
    return { table: { rows: fates.length, numbers, words, rowNumbers: this.rowNumbers.done() }, fates };
  }

  private fitsWidth(cells: readonly string[], row: number): boolean {
    if (cells.length < this.width) {
      this.counter.cell("", "short-row", row, cells.at(-1) ?? "");
      return true;
    }
    for (let i = this.width; i < cells.length; i++) {
      if (isBlank(cells[i] as string)) continue;
      this.counter.count(TOO_LONG, row);
      return false;
    }
    return true;
  }

  private readNumber(own: NumberColumn, cell: string, row: number): number {
    if (cell === "") return Number.NaN;
    let value = cellNumber(cell, this.decimalMark) * own.factor;
    if (value >= own.low && value <= own.high) return own.factor === 1 ? value : tidy(value);
    if (isMissingCell(cell)) return Number.NaN;
    if (Number.isNaN(value)) {
      const bare = /[a-z"'″′”’]/i.test(cell) ? cell : `${cell} ${own.unit}`;
      const read = readEntry(own.entry, bare, { decimalMark: this.decimalMark });
      if (read.ok) {
        this.counter.cell(own.column, "unit-in-cell", row, cell);
        return read.value.value as number;
      }
      if (read.error.type !== "out-of-limits") {
        this.counter.cell(own.column, "unreadable", row, cell);
        if (own.name === "weightKg") this.weightFate = WEIGHT_UNREADABLE;
        return Number.NaN;
      }
    } else {
      value = (value / own.factor) * own.alsoFactor;
      if (value >= own.low && value <= own.high) {
        this.counter.cell(own.column, "converted", row, cell);
        return tidy(value);
      }
    }
    this.counter.cell(own.column, "out-of-limits", row, cell);
    if (own.name === "weightKg") this.weightFate = WEIGHT_IMPOSSIBLE;
    return Number.NaN;
  }

  private readCode(own: CodeColumn, cell: string, row: number): number {
    const known = own.codeOf.get(cell);
    if (known !== undefined) return known;
    if (isMissingCell(cell)) return -1;
    const word = own.open
      ? cell.trim()
      : cell
          .trim()
          .toLowerCase()
          .replaceAll(/[\s_]+/g, "-");
    let code = own.codeOf.get(word);
    if (code === undefined && own.open) {
      code = own.levels.push(word) - 1;
      own.codeOf.set(word, code);
    }
    if (code === undefined) {
      this.counter.cell(own.column, "word-unknown", row, cell);
      return -1;
    }
    own.codeOf.set(cell, code);
    return code;
  }

  private valueOf(name: keyof TableBuilder["places"]): number {
    const place = this.places[name];
    return place < 0 ? Number.NaN : (this.values[place] as number);
  }

  private lyingLength(stance: number): number {
    const lying = this.valueOf("lengthCm");
    if (!Number.isNaN(lying)) return lying;
    const standing = this.valueOf("standingHeightCm");
    if (!Number.isNaN(standing)) return tidy(standing + LYING_LESS_STANDING_CM);
    const stature = this.valueOf("statureCm");
    if (Number.isNaN(stature)) return stature;
    const ageMonths = this.valueOf("ageMonths");
    const isLying =
      stance >= 0
        ? stance === 0
        : Number.isNaN(ageMonths)
          ? stature < LYING_BELOW.cm
          : ageMonths < LYING_BELOW.ageMonths;
    return isLying ? stature : tidy(stature + LYING_LESS_STANDING_CM);
  }

  private fateOf(lengthCm: number, oedema: number): number {
    if (Number.isNaN(this.valueOf("weightKg"))) return this.weightFate;
    if (Number.isNaN(lengthCm) && Number.isNaN(this.valueOf("ageMonths"))) return NOTHING_TO_GO_BY;
    return oedema === 0 ? OEDEMA : INCLUDED;
  }
}

function numberColumn(
  { column, role, unit, alsoUnit }: ColumnMapping,
  index: number,
  expectedRows: number,
): NumberColumn[] {
  const name =
    role.type === "estimate"
      ? column
      : role.type === "field" && isQuantity(role.field)
        ? role.field
        : undefined;
  if (name === undefined) return [];
  const entry = role.type === "field" && isQuantity(role.field) ? QUANTITY_FIELDS[role.field] : "scaleKg";
  const own = role.type === "field" && isQuantity(role.field) ? STUDY_UNIT[role.field] : "kg";
  const from = unit ?? own;
  return [
    {
      column,
      index,
      name,
      entry,
      unit: from,
      factor: unitFactor({ from, to: own }),
      alsoFactor: alsoUnit === undefined ? Number.NaN : unitFactor({ from: alsoUnit, to: own }),
      ...HUMAN_LIMITS[entry],
      store: new NumberStore(expectedRows),
    },
  ];
}

function codeColumn({ column, role }: ColumnMapping, index: number, expectedRows: number): CodeColumn[] {
  if (role.type === "group" || (role.type === "field" && !isQuantity(role.field) && !isWord(role.field))) {
    const name = role.type === "group" ? column : role.field;
    return [
      { column, index, name, codeOf: new Map(), levels: [], open: true, store: new CodeStore(expectedRows) },
    ];
  }
  if (role.type !== "field" || !isWord(role.field)) return [];
  const words = Object.entries(WORD_FIELDS[role.field]) as [string, readonly string[]][];
  const codeOf = new Map(
    words.flatMap(([, spellings], code) => spellings.map((spelling) => [spelling, code] as const)),
  );
  return [
    {
      column,
      index,
      name: role.field,
      codeOf,
      levels: words.map(([level]) => level),
      open: false,
      store: new CodeStore(expectedRows),
    },
  ];
}

function isBlank(cell: string): boolean {
  return cell === "" || cell.trim() === "";
}

/** 85.1 + 0.7 is 85.8, not 85.79999999999998. */
function tidy(value: number): number {
  return Math.round(value * 1e9) / 1e9;
}
