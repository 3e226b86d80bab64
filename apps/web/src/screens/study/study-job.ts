import type { Formulary } from "@steelyard/core/dosing";
import type { ColumnMapping, MappingChange } from "@steelyard/study/import";
import type { Block } from "@steelyard/study/report";

/** What the page asks of the worker. */
export type StudyRequest =
  | {
      readonly type: "open";
      readonly file: File | "example";
      readonly today: string;
      readonly software: string;
    }
  | {
      readonly type: "judge";
      readonly changes: readonly MappingChange[];
      readonly methods: readonly string[];
      readonly by: readonly string[];
      readonly compared: ComparedAs;
      /** Of the site; the draft that comes with the page where it has none. */
      readonly formulary?: Formulary | undefined;
    }
  | { readonly type: "files" }
  | { readonly type: "figure"; readonly name: string }
  | { readonly type: "calibration"; readonly site: string };

/** What is compared with what, what is drawn by chance, and whether doses are judged. */
export interface ComparedAs {
  /** Id of the method that all others are compared with; the first where it is not judged. */
  readonly reference: string;
  /** Points of children within 10 %; none where 0. */
  readonly marginPoints: number;
  /** Column whose words are drawn together; the usual one where empty. */
  readonly clusters: string;
  readonly seed: number;
  readonly doses: boolean;
}

export const COMPARED_USUALLY: ComparedAs = {
  reference: "",
  marginPoints: 0,
  clusters: "",
  seed: 1,
  doses: false,
};

export type StudyStep = "reading" | "estimating" | "comparing" | "judging" | "drawing";

/** A part of the report for the screen: a figure is the text of its SVG. */
export type ShownBlock =
  | Exclude<Block, { type: "figure" }>
  | { readonly type: "figure"; readonly name: string; readonly caption: string; readonly svg: string };

/** A study as far as the page shows it; the rows stay in the worker. */
export interface ShownStudy {
  readonly title: string;
  readonly mapping: readonly ColumnMapping[];
  readonly chosenMethods: readonly string[];
  /** Every method there is for this file, with its name. */
  readonly methods: readonly { readonly id: string; readonly name: string }[];
  readonly chosenGroups: readonly string[];
  readonly groups: readonly string[];
  readonly compared: ComparedAs;
  /** Columns whose words may be clusters. */
  readonly clusters: readonly string[];
  readonly blocks: readonly ShownBlock[];
}

/** What the worker tells the page. */
export type StudyAnswer =
  | { readonly type: "progress"; readonly step: StudyStep; readonly share: number }
  | { readonly type: "failed"; readonly sentence: string; readonly mapping?: readonly ColumnMapping[] }
  | { readonly type: "judged"; readonly study: ShownStudy }
  | {
      readonly type: "file";
      readonly name: string;
      readonly bytes: Uint8Array<ArrayBuffer>;
      readonly mime: string;
    }
  | { readonly type: "no-calibration"; readonly sentence: string };
