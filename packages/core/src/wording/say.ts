import type { MessageCatalogue, MessageKey, MessageValues } from "./message-catalogue.ts";

type Prefix = "entry-issue" | "entry-notice" | "proposal" | "body-issue" | "body-warning" | "slip";

/** What may be said under a prefix: the values of all keys that begin with it. */
type Sayable<P extends Prefix> = {
  [K in MessageKey]: K extends `${P}.${string}` ? MessageValues[K] : never;
}[MessageKey];

/** The sentence for a typed value: its `type` is the second half of the message key. */
export function say<P extends Prefix>(
  catalogue: MessageCatalogue,
  prefix: P,
  values: Sayable<P> & { readonly type: string },
): string {
  const sentence = catalogue[`${prefix}.${values.type}` as MessageKey] as (values: Sayable<P>) => string;
  return sentence(values);
}
