import type { Verification } from "../citation.ts";

export type { SourceRef, Verification } from "../citation.ts";

/** A document of the registry `docs/sources.json`, as far as a formulary embeds it. */
export interface Source {
  readonly id: string;
  readonly title: string;
  readonly authors?: string;
  readonly year?: number;
  readonly doi?: string;
  readonly url?: string;
  readonly verification: Verification;
  readonly note?: string;
}

/** Where one value comes from: the document, the place in it, and whether it was seen there. */
export interface Citation {
  readonly sourceId: string;
  readonly locator?: string;
  readonly verification: Verification;
}
