/** How well a value is known to be in its source. Anything but `read` must be checked against the document. */
export type Verification = "read" | "memory" | "common practice";

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

/** A citation as it travels with a line. */
export interface SourceRef {
  readonly sourceId: string;
  readonly title: string;
  readonly locator?: string;
  readonly verification: Verification;
}
