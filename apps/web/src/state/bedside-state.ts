import type { EntryField } from "@steelyard/core/entry";

/** The fields of this screen, in the order they are asked. */
export const bedsideFields = [
  "lengthCm",
  "armMm",
  "sex",
  "ageMonths",
] as const satisfies readonly EntryField[];
export type BedsideField = (typeof bedsideFields)[number];

/** Fields that stay folded away until asked for. */
export type OptionalField = Extract<BedsideField, "sex" | "ageMonths">;

/** Everything the screen knows. What it shows is computed from this by `readBedside`. */
export interface BedsideState {
  /** Exactly what was typed or chosen; nothing here is ever rewritten unless a person presses a button. */
  readonly texts: Readonly<Record<BedsideField, string>>;
  /** Optional fields that are open. */
  readonly open: readonly OptionalField[];
  /** The field under the fingers just now: half a number is no reason to complain. */
  readonly typing: BedsideField | undefined;
  /** The texts come from before the page was reloaded, and nobody has touched them since. */
  readonly carriedOver: boolean;
  /** The texts of the child before, kept so that a slip of the thumb on “New child” costs nothing. */
  readonly setAside: BedsideState["texts"] | undefined;
}

const noTexts: BedsideState["texts"] = { lengthCm: "", armMm: "", sex: "", ageMonths: "" };

export const emptyBedside: BedsideState = {
  texts: noTexts,
  open: [],
  typing: undefined,
  carriedOver: false,
  setAside: undefined,
};

/** The state for texts found in the page or kept from before a reload. */
export function bedsideFrom({
  texts,
  carriedOver,
}: {
  readonly texts: Partial<Record<BedsideField, string>>;
  readonly carriedOver: boolean;
}): BedsideState {
  const all = { ...noTexts, ...texts };
  return {
    texts: all,
    open: (["sex", "ageMonths"] as const).filter((field) => all[field] !== ""),
    typing: undefined,
    carriedOver: carriedOver && isTouched(all),
    setAside: undefined,
  };
}

export function isTouched(texts: BedsideState["texts"]): boolean {
  return bedsideFields.some((field) => texts[field] !== "");
}
