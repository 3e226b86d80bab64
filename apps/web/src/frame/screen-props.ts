import type { EstimatedChild } from "@steelyard/core/body";
import type { FunctionComponent } from "preact";
import type { BedsideState } from "../state/bedside-state.ts";
import type { BedsideEvent } from "../state/update.ts";

/** What every screen behind Bedside is given. */
export interface ScreenProps {
  /** What follows the screen's name in the address. */
  readonly path: string;
  /** The child on Bedside just now; absent while nothing is measured. */
  readonly child: EstimatedChild | undefined;
  /** What was typed on Bedside. */
  readonly texts: BedsideState["texts"];
  /** The calibration kept on this device. */
  readonly site: BedsideState["site"];
  /** What doses are computed by; undefined until the device has been looked through. */
  readonly formulary: BedsideState["formulary"];
  /** What waits for the next child. */
  readonly next: BedsideState["next"];
  /** Says something to Bedside. */
  readonly send: (event: BedsideEvent) => void;
}

/** A screen's part of the page exports this under the name `Screen`. Its parts are inside the frame's `main`. */
export type Screen = FunctionComponent<ScreenProps>;
