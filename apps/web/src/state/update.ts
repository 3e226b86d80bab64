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
  /** One of the words of a choice: said in full at once, unlike a number under the fingers. */
  | { readonly type: "chosen"; readonly field: BedsideField; readonly text: string }
  /** The person has paused or left the field. */
  | { readonly type: "settled" }
  | { readonly type: "asked-for"; readonly field: OptionalField }
  | { readonly type: "asked-for-all" }
  | { readonly type: "searched"; readonly text: string }
  /** A problem of the sheet is opened or folded. */
  | { readonly type: "turned"; readonly problem: string }
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
    case "chosen":
      return update(update(state, { ...event, type: "typed" }), { type: "settled" });
    case "settled":
      return state.typing === undefined ? state : { ...state, typing: undefined };
    case "asked-for":
      return state.open.includes(event.field) ? state : { ...state, open: [...state.open, event.field] };
    case "asked-for-all":
      return { ...state, offersAll: true };
    case "searched":
      return { ...state, search: event.text };
    case "turned": {
      const others = state.turned.filter((problem) => problem !== event.problem);
      const isTurned = others.length < state.turned.length;
      return { ...state, turned: isTurned ? others : [...others, event.problem] };
    }
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
