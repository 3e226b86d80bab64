import type { Measurements } from "@steelyard/core/body";
import type { PaperChoices } from "./paper-choices.ts";
import type { PaperRefusal } from "./paper-refusal.ts";

/** What the page asks of the worker. */
export type PaperRequest =
  | {
      readonly type: "draw";
      readonly choices: PaperChoices;
      /** Of the child on Bedside, for its sheet and its labels. */
      readonly measurements: Measurements | undefined;
      /** YYYY-MM-DD. */
      readonly today: string;
      readonly software: string;
      /** The page to show first, or the last one where there are fewer. */
      readonly page: number;
      /** What its file is to be called. */
      readonly name: string;
    }
  | { readonly type: "page"; readonly page: number }
  /** Of what is drawn, or is being drawn. */
  | { readonly type: "file" };

/** A page of a paper as a picture. */
export interface ShownPage {
  readonly page: number;
  readonly pages: number;
  readonly svg: string;
}

/** What the worker tells the page. */
export type PaperAnswer =
  /** Of a booklet: how many of how many weights are drawn. */
  | { readonly type: "progress"; readonly done: number; readonly of: number }
  | { readonly type: "refused"; readonly refusal: PaperRefusal }
  | { readonly type: "drawn"; readonly shown: ShownPage }
  | { readonly type: "file"; readonly name: string; readonly bytes: Uint8Array<ArrayBuffer> };
