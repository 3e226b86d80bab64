import type { StoredSiteProfile } from "@steelyard/core/body";
import type { OfflineState } from "../components/cautions/cautions.tsx";
import type { Screen } from "../frame/screen-props.ts";
import type { Later } from "../later/later.ts";
import type { CaseLog } from "../screens/case-log/case-log.tsx";
import type { BedsideField } from "../state/bedside-state.ts";
import type { LaterScreenId, Route } from "../state/screens.ts";

export type Texts = Readonly<Record<BedsideField, string>>;

/** What the page does to the world around it. The tests and the prerendered page have effects that do nothing. */
export interface Effects {
  /** Texts typed before the script came, or kept from before a reload; undefined when there are none. */
  readonly findTexts: () => { readonly texts: Partial<Texts>; readonly carriedOver: boolean } | undefined;
  /** Keeps the texts for as long as the tab lives. */
  readonly keepTexts: (texts: Texts) => void;
  /** The lines of the sheet that are kept at its top on this device, by id. */
  readonly findPins: () => readonly string[];
  readonly keepPins: (pinned: readonly string[]) => void;
  /** The calibration kept on this device. */
  readonly findSite: () => StoredSiteProfile | undefined;
  /** Tells the day as 2026-11-25, at once and when the page is looked at again. */
  readonly watchDay: (tell: (today: string) => void) => void;
  /** Whether numbers are typed with the page's own keys: on a touch screen, unless somebody has given them up there. */
  readonly wantsPad: () => boolean;
  /** Gives the fields to the device's own keyboard from now on; returns what `wantsPad` says then. */
  readonly giveUpPad: () => boolean;
  /** The part of the page behind the first screen; fails where it cannot be had. */
  readonly loadLater: () => Promise<Later>;
  /** The part of the page that holds a screen; fails where it cannot be had. */
  readonly loadScreen: (screen: LaterScreenId) => Promise<Screen>;
  /** The clock and the log of the case; fails where they cannot be had. */
  readonly loadCaseLog: () => Promise<typeof CaseLog>;
  readonly reload: () => void;
  /** Tells where the address leads, at once and whenever that changes. */
  readonly watchRoute: (tell: (route: Route) => void) => void;
  /** Names the window and takes the reader to the start of another screen. */
  readonly showScreen: (screen: { readonly title: string; readonly mainId: string }) => void;
  /** Tells whether the page will open without a network, whenever that changes. */
  readonly watchOffline: (tell: (state: OfflineState) => void) => void;
  /** Tells when the page is about to be put on paper, and when that is over. */
  readonly watchPrinting: (tell: (printing: boolean) => void) => void;
}

export const noEffects: Effects = {
  findTexts: () => undefined,
  keepTexts: () => undefined,
  findPins: () => [],
  keepPins: () => undefined,
  findSite: () => undefined,
  watchDay: () => undefined,
  wantsPad: () => false,
  giveUpPad: () => false,
  loadLater: () => new Promise(() => undefined),
  loadScreen: () => new Promise(() => undefined),
  loadCaseLog: () => new Promise(() => undefined),
  reload: () => undefined,
  watchRoute: () => undefined,
  showScreen: () => undefined,
  watchOffline: () => undefined,
  watchPrinting: () => undefined,
};
