import type { LookupAnswer, LookupGapLine, LookupUnit, LookupValue, LookupWarning } from "../lookup/index.ts";

export type EquipmentItem =
  | "tracheal-tube"
  | "tracheal-tube-depth"
  | "laryngoscope-blade"
  | "supraglottic-airway"
  | "oropharyngeal-airway"
  | "nasopharyngeal-airway"
  | "mask"
  | "bag"
  | "tidal-volume"
  | "ventilation-rate"
  | "suction-catheter"
  | "gastric-tube"
  | "chest-drain"
  | "urinary-catheter"
  | "cannula"
  | "intraosseous-needle"
  | "blood-pressure-cuff"
  | "defibrillator-pads";

/** Which of several of the same item. */
export type EquipmentKind =
  | "cuffed"
  | "uncuffed"
  | "oral"
  | "nasal"
  | "mask-type"
  | "gel-type"
  | "ventilator"
  | "during-compressions";

/** A choice that is no number. */
export type EquipmentWord =
  | "round-mask"
  | "shaped-mask"
  | "child-pads"
  | "adult-pads"
  | "incisors-to-jaw-angle"
  | "nostril-to-tragus";

export type EquipmentValue = LookupValue | EquipmentWord;

/** What belongs to the item whatever its size. */
export type EquipmentNote =
  | "cuff-pressure"
  | "confirm-position"
  | "check-tissue-depth"
  | "intraosseous-site"
  | "pads-apart"
  | "see-chest-rise"
  | "end-expiratory-pressure"
  | "device-label-first";

/** What one rule says. */
export interface EquipmentChoice extends LookupAnswer<EquipmentValue> {
  /** Absent for a choice in words. */
  readonly unit?: LookupUnit;
  /** Of a laryngoscope blade. */
  readonly shape?: "straight" | "curved";
  /** Of the bladder of a cuff, whose width is the value. */
  readonly bladderLengthCm?: number;
}

interface EquipmentHead {
  /** `item` or `item.kind`, stable across versions. */
  readonly id: string;
  readonly item: EquipmentItem;
  readonly kind?: EquipmentKind;
}

/** One item for one child, with its size. */
export interface EquipmentSizeLine extends EquipmentHead, EquipmentChoice {
  readonly unavailable?: undefined;
  /** What other published rules or the neighbouring range give, whether they agree or not. */
  readonly alternatives: readonly EquipmentChoice[];
  /** Sizes to have within reach as well, in the same unit. */
  readonly ready?: readonly number[];
  readonly notes: readonly EquipmentNote[];
  readonly warnings: readonly LookupWarning[];
}

/** One item without a size for this child, and why. */
export interface EquipmentGapLine extends EquipmentHead, LookupGapLine {}

export type EquipmentLine = EquipmentSizeLine | EquipmentGapLine;

/** A bladder of the site's cuffs. */
export interface Bladder {
  readonly widthCm: number;
  readonly lengthCm: number;
}
