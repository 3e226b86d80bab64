import * as v from "valibot";
import { identifier, text } from "../schema/primitives.ts";

/** A site's changes to a formulary, kept apart from it, so that a new edition of the base can be taken over. */
export interface Overlay {
  readonly id: string;
  readonly version: string;
  readonly title: string;
  /** The formulary it was made for. */
  readonly base: { readonly id: string; readonly version: string };
  /** Applied in this order. */
  readonly changes: readonly OverlayChange[];
}

export type OverlayChange = {
  /** Where: "medicines/adrenaline/uses/anaphylaxis-im/options/by-weight/rule/maximum". */
  readonly at: string;
  readonly reason: string;
} & (
  | {
      readonly change: "set";
      /** What stood there when the change was made; absent where nothing did. */
      readonly from?: unknown;
      readonly to: unknown;
    }
  /** `at` is the list that the member joins. */
  | { readonly change: "add"; readonly value: unknown }
  | { readonly change: "remove"; readonly from: unknown }
);

const parts = { at: text, reason: text };

export const overlaySchema: v.GenericSchema<unknown, Overlay> = v.strictObject({
  id: identifier,
  version: text,
  title: text,
  base: v.strictObject({ id: identifier, version: text }),
  changes: v.pipe(
    v.array(
      v.variant("change", [
        v.strictObject({
          change: v.literal("set"),
          from: v.exactOptional(v.unknown()),
          to: v.unknown(),
          ...parts,
        }),
        v.strictObject({ change: v.literal("add"), value: v.unknown(), ...parts }),
        v.strictObject({ change: v.literal("remove"), from: v.unknown(), ...parts }),
      ]),
    ),
    v.minLength(1, "has no change"),
  ),
});
