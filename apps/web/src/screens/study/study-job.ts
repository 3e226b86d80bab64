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
    }
  | { readonly type: "files" }
  | { readonly type: "calibration"; readonly site: string };

export type StudyStep = "reading" | "estimating" | "judging" | "drawing";

/** A part of the report for the screen: a figure is the text of its SVG. */
export type ShownBlock =
  | Exclude<Block, { type: "figure" }>
  | { readonly type: "figure"; readonly caption: string; readonly svg: string };

/** A study as far as the page shows it; the rows stay in the worker. */
export interface ShownStudy {
  readonly title: string;
  readonly mapping: readonly ColumnMapping[];
  readonly chosenMethods: readonly string[];
  /** Every method there is for this file, with its name. */
  readonly methods: readonly { readonly id: string; readonly name: string }[];
  readonly chosenGroups: readonly string[];
  readonly groups: readonly string[];
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
