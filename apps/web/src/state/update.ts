import type { StoredSiteProfile } from "@steelyard/core/body";
import type { Proposal } from "@steelyard/core/entry";
import {
  type BedsideField,
  type BedsideState,
  bedsideFrom,
  emptyBedside,
  isTouched,
  type OptionalField,
} from "./bedside-state.ts";
import { type FormularyInUse, isSameFormulary, type SiteRules } from "./site-rules.ts";
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
  /** A correction is taken; `field` is where it belongs when that is a second or third reading. */
  | { readonly type: "proposal-accepted"; readonly proposal: Proposal; readonly field?: string }
  /** The other person's readings are taken in, as those after the first. */
  | { readonly type: "second-reading"; readonly lengthCm: string; readonly armMm: string }
  | { readonly type: "day-known"; readonly today: string }
  | { readonly type: "pins-found"; readonly pinned: readonly string[] }
  /** The calibration of this device, found at the start; none where `site` is undefined. */
  | { readonly type: "site-known"; readonly site: StoredSiteProfile | undefined }
  /** The formulary of this device has been looked for. */
  | { readonly type: "formulary-known"; readonly formulary: FormularyInUse }
  /** The site has other rules: for the child on the screen only where nothing was typed for it. */
  | { readonly type: "rules-came"; readonly rules: SiteRules }
  /** A line of the sheet is kept at the top, or not any more. */
  | { readonly type: "pinned"; readonly line: string }
  /** Another published dose is computed for a line; the default again where `option` is undefined. */
  | { readonly type: "option-chosen"; readonly line: string; readonly option: string | undefined }
  | { readonly type: "next-child" }
  | { readonly type: "brought-back" };

/** The state after an event. */
export function update(state: BedsideState, event: BedsideEvent): BedsideState {
  switch (event.type) {
    case "found":
      return { ...bedsideFrom(event), ...ofDevice(state) };
    case "typed":
      return {
        ...state,
        texts: { ...state.texts, [event.field]: event.text },
        typing: event.field,
        carriedOver: false,
        begun: true,
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
        texts: { ...state.texts, ...textsOfProposal(event.proposal, event.field) },
        typing: undefined,
        carriedOver: false,
      };
    case "second-reading":
      return withSecondReading(state, event);
    case "day-known":
      return state.today === event.today ? state : { ...state, today: event.today };
    case "pins-found":
      return { ...state, pinned: event.pinned };
    case "site-known":
      return { ...state, site: event.site };
    case "formulary-known":
      return { ...state, formulary: event.formulary };
    case "rules-came": {
      const came = { ...state, next: unlikeNow({ ...state.next, ...event.rules }, state) };
      return state.begun ? came : withNextRules(came);
    }
    case "pinned": {
      const others = state.pinned.filter((line) => line !== event.line);
      const wasPinned = others.length < state.pinned.length;
      return { ...state, pinned: wasPinned ? others : [...others, event.line] };
    }
    case "option-chosen": {
      const { [event.line]: _, ...others } = state.choices;
      return {
        ...state,
        choices: event.option === undefined ? others : { ...others, [event.line]: event.option },
      };
    }
    case "next-child": {
      const isLeft = isTouched(state.texts);
      return withNextRules({
        ...emptyBedside,
        ...ofDevice(state),
        setAside: isLeft ? state.texts : state.setAside,
        rulesAside: isLeft ? rulesOf(state) : state.rulesAside,
      });
    }
    case "brought-back":
      return state.setAside === undefined
        ? state
        : {
            ...bedsideFrom({ texts: state.setAside, carriedOver: false }),
            ...ofDevice(state),
            ...rulesBroughtBack(state),
            broughtBack: true,
          };
  }
}

type OfDevice = Pick<BedsideState, "today" | "pinned" | "site" | "formulary" | "next">;

/** What belongs to the device and the day, and outlives a child. */
function ofDevice({ today, pinned, site, formulary, next }: BedsideState): OfDevice {
  return { today, pinned, site, formulary, next };
}

function rulesOf({ formulary, site }: BedsideState): SiteRules {
  return { ...(formulary && { formulary }), site: { profile: site } };
}

/** The rules that are others than those of now; none where none are. */
function unlikeNow({ formulary, site }: SiteRules, now: BedsideState): SiteRules | undefined {
  const unlike: SiteRules = {
    ...(formulary && !isSameFormulary(formulary, now.formulary) && { formulary }),
    ...(site && JSON.stringify(site.profile) !== JSON.stringify(now.site) && { site }),
  };
  return (unlike.formulary ?? unlike.site) ? unlike : undefined;
}

/** Between two children: what waited is in use from here on. */
function withNextRules({ next, ...state }: BedsideState): BedsideState {
  const { formulary, site } = next ?? {};
  return {
    ...state,
    next: undefined,
    formulary: formulary ?? state.formulary,
    site: site === undefined ? state.site : site.profile,
  };
}

/** The child of before keeps the rules that its doses were computed by; those of now wait for the next one again. */
function rulesBroughtBack(state: BedsideState): Partial<BedsideState> {
  const { rulesAside } = state;
  if (rulesAside === undefined) return {};
  const { formulary = state.formulary, site } = rulesAside;
  const own = { ...state, formulary, site: site?.profile };
  return { formulary, site: own.site, next: unlikeNow({ ...rulesOf(state), ...state.next }, own) };
}

/** Into the second places, or the third where the second are taken. */
function withSecondReading(
  state: BedsideState,
  { lengthCm, armMm }: { readonly lengthCm: string; readonly armMm: string },
): BedsideState {
  const isThird = state.texts.lengthCm2 !== "" || state.texts.armMm2 !== "";
  const group = isThird ? "lengthCm3" : "lengthCm2";
  const read = isThird ? { lengthCm3: lengthCm, armMm3: armMm } : { lengthCm2: lengthCm, armMm2: armMm };
  return {
    ...state,
    texts: { ...state.texts, ...read },
    open: state.open.includes(group) ? state.open : [...state.open, group],
    typing: undefined,
    carriedOver: false,
  };
}
