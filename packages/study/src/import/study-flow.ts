/** Why a row is not part of the comparison, in the order in which it is asked; a row has one fate. */
export const FATES = [
  "included",
  "row-too-long",
  "weight-missing",
  "weight-unreadable",
  "weight-impossible",
  "length-and-age-missing",
  "oedema",
] as const;

export type Fate = (typeof FATES)[number];

/** What became of every row of the file: the flow diagram as data. `read` is the sum of all fates. */
export interface StudyFlow {
  readonly read: number;
  /** Lines with nothing in them; not rows. */
  readonly blankLines: number;
  readonly included: number;
  readonly leftOut: readonly {
    readonly fate: Exclude<Fate, "included">;
    readonly rows: number;
    readonly first: readonly number[];
  }[];
}

/** What was found in single cells whose row is kept without them. */
export interface CellProblem {
  readonly column: string;
  readonly type: "unreadable" | "out-of-limits" | "unit-in-cell" | "converted" | "word-unknown" | "short-row";
  readonly cells: number;
  readonly first: readonly { readonly row: number; readonly text: string }[];
}

const SHOWN = 8;

export class FlowCounter {
  private readonly fates = FATES.map(() => ({ rows: 0, first: [] as number[] }));
  private readonly problems = new Map<
    string,
    { column: string; type: CellProblem["type"]; cells: number; first: { row: number; text: string }[] }
  >();
  blankLines = 0;

  count(fate: number, row: number): void {
    const counter = this.fates[fate] as { rows: number; first: number[] };
    counter.rows++;
    if (fate > 0 && counter.first.length < SHOWN) counter.first.push(row);
  }

  cell(column: string, type: CellProblem["type"], row: number, text: string): void {
    const key = `${type} ${column}`;
    const found = this.problems.get(key) ?? { column, type, cells: 0, first: [] };
    found.cells++;
    if (found.first.length < SHOWN) found.first.push({ row, text: text.slice(0, 60) });
    this.problems.set(key, found);
  }

  flow(): StudyFlow {
    const leftOut = FATES.flatMap((fate, i) => {
      const { rows, first } = this.fates[i] as { rows: number; first: number[] };
      return fate === "included" || rows === 0 ? [] : [{ fate, rows, first }];
    });
    return {
      read: this.fates.reduce((sum, { rows }) => sum + rows, 0),
      blankLines: this.blankLines,
      included: this.fates[0]?.rows ?? 0,
      leftOut,
    };
  }

  cellProblems(): readonly CellProblem[] {
    return [...this.problems.values()];
  }
}
