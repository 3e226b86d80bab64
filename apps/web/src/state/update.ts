import type { Proposal } from "@steelyard/core/entry";
import {
  type BedsideField,
  type BedsideState,
  bedsideFrom,
  emptyBedside,
  isTouched,
  type OptionalField,
} from "./bedside-state.ts";
import { textsOfProposal } from "./texts-of-proposal.ts";

export type BedsideEvent =
  /** Texts that were there before the script was: typed ahead of it, or kept from before a reload. */
  | {
      readonly type: "found";
      readonly texts: Partial<Record<BedsideField, string>>;
      readonly carriedOver: boolean;
    }
  | { readonly type: "typed"; readonly field: BedsideField; readonly text: string }
  /** The person has paused or left the field. */
  | { readonly type: "settled" }
  | { readonly type: "asked-for"; readonly field: OptionalField }
  | { readonly type: "proposal-accepted"; readonly proposal: Proposal }
  | { readonly type: "next-child" }
  | { readonly type: "brought-back" };

/** The state after an event. */
export function update(state: BedsideState, event: BedsideEvent): BedsideState {
  switch (event.type) {
    case "found":
      return bedsideFrom(event);
    case "typed":
      return {
        ...state,
        texts: { ...state.texts, [event.field]: event.text },
        typing: event.field,
        carriedOver: false,
        setAside: undefined,
      };
    case "settled":
      return state.typing === undefined ? state : { ...state, typing: undefined };
    case "asked-for":
      return state.open.includes(event.field) ? state : { ...state, open: [...state.open, event.field] };
    case "proposal-accepted":
      return {
        ...state,
        texts: { ...state.texts, ...textsOfProposal(event.proposal) },
        typing: undefined,
        carriedOver: false,
      };
    case "next-child":
      return { ...emptyBedside, setAside: isTouched(state.texts) ? state.texts : state.setAside };
    case "brought-back":
      return state.setAside === undefined
        ? state
        : bedsideFrom({ texts: state.setAside, carriedOver: false });
  }
}
