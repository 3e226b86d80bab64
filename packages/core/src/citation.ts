/** How well a value is known to be in its source. Anything but `read` must be checked against the document. */
export type Verification = "read" | "memory" | "common practice";

/** A citation as it travels with a result. */
export interface SourceRef {
  readonly sourceId: string;
  readonly title: string;
  readonly locator?: string;
  readonly verification: Verification;
}
