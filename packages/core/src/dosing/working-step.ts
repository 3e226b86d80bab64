import type { Dose, DoseUnit } from "../units/index.ts";
import type { Basis } from "./weights.ts";

/** How often a rate of dosing counts. */
export type PerTime = "min" | "h";

/** An amount in each mL. */
export interface Concentration {
  readonly amountPerMl: number;
  readonly unit: DoseUnit;
}

/**
 * One step of the arithmetic, as data; `core/wording` renders each to a sentence.
 *
 * The steps of a line stand in the order in which they were taken, and each starts from the result before it.
 */
export type WorkingStep =
  /** The band of age or weight [low, high) that applies; months or kg. */
  | {
      readonly step: "band";
      readonly by: "age" | "weight";
      readonly value: number;
      readonly low: number;
      readonly high?: number;
    }
  /** A weight other than the rule's was taken, as the child is lighter than its ideal weight. */
  | {
      readonly step: "basis-swapped";
      readonly from: Basis;
      readonly fromKg: number;
      readonly to: "total";
      readonly toKg: number;
    }
  /** Adjusted weight with the share of the rule: ideal + share x (total - ideal). */
  | {
      readonly step: "adjusted-weight";
      readonly idealKg: number;
      readonly share: number;
      readonly totalKg: number;
      readonly kg: number;
    }
  | {
      readonly step: "per-kg";
      readonly perKg: Dose;
      readonly basis: Basis;
      readonly kg: number;
      readonly result: Dose;
    }
  | {
      readonly step: "per-m2";
      readonly perM2: Dose;
      readonly lengthCm: number;
      readonly kg: number;
      readonly surfaceM2: number;
      readonly result: Dose;
    }
  /** perKg, for each percent of body surface burnt, x kg x percent. */
  | {
      readonly step: "per-kg-burnt";
      readonly perKg: Dose;
      readonly basis: Basis;
      readonly kg: number;
      readonly burnPercent: number;
      readonly result: Dose;
    }
  /** A part of the dose that runs over so many hours. */
  | {
      readonly step: "portion";
      readonly dose: Dose;
      readonly sharePercent: number;
      readonly overH: number;
      readonly ml: number;
      readonly mlPerH: number;
    }
  | { readonly step: "fixed"; readonly result: Dose }
  | {
      readonly step: "limit";
      readonly limit: "single-maximum" | "minimum";
      readonly from: Dose;
      readonly result: Dose;
    }
  /** Dose over concentration. */
  | { readonly step: "volume"; readonly dose: Dose; readonly strength: Concentration; readonly ml: number }
  /** The volume is too small to measure, so a weaker strength of the same medicine is taken. */
  | {
      readonly step: "weaker-strength";
      readonly ml: number;
      readonly measurableMl: number;
      readonly from: Concentration;
      readonly to: Concentration;
    }
  /** The volume is too small to measure: takeMl of the strength and addMl of the diluent make totalMl. */
  | {
      readonly step: "dilution";
      readonly ml: number;
      readonly measurableMl: number;
      readonly takeMl: number;
      readonly addMl: number;
      readonly totalMl: number;
      readonly diluent: string;
      readonly from: Concentration;
      readonly to: Concentration;
    }
  /** To the marks of the syringe that can measure it; `syringeMl` is absent above the largest syringe. */
  | {
      readonly step: "rounding";
      readonly exactMl: number;
      readonly ml: number;
      readonly markMl: number;
      readonly syringeMl?: number;
      /** As the source of the dose says, in place of the marks of the syringe. */
      readonly byRule?: true;
      readonly errorPercent: number;
    }
  /** What that volume holds: the dose as drawn up. */
  | {
      readonly step: "drawn-up";
      readonly ml: number;
      readonly strength: Concentration;
      readonly result: Dose;
    }
  /** The same volume counted as another substance that the label states. */
  | {
      readonly step: "equivalent";
      readonly ml: number;
      readonly strength: Concentration;
      readonly of: string;
      readonly result: Dose;
    }
  /** Whole puffs of an inhaler, and what they hold. */
  | {
      readonly step: "puffs";
      readonly dose: Dose;
      readonly perPuff: Dose;
      readonly exactPuffs: number;
      readonly puffs: number;
      readonly result: Dose;
      readonly errorPercent: number;
    }
  /** Dose over the highest rate (x kg where that is per kg): the shortest time it may be given in. */
  | {
      readonly step: "shortest-time";
      readonly dose: Dose;
      readonly maximumRate: Dose;
      readonly kg?: number;
      readonly minutes: number;
    }
  /** Dose over the highest concentration: the smallest volume it may be given in. */
  | {
      readonly step: "least-volume";
      readonly dose: Dose;
      readonly maximumConcentration: Concentration;
      readonly ml: number;
    }
  /** mL/h tier by tier of weight. */
  | {
      readonly step: "tiers";
      readonly basis: Basis;
      readonly parts: readonly { readonly kg: number; readonly perKg: Dose; readonly result: Dose }[];
      readonly result: Dose;
    }
  /** A fluid that runs as it is: perKg x kg = mlPerH. */
  | {
      readonly step: "fluid-rate";
      readonly perKg: Dose;
      readonly basis: Basis;
      readonly kg: number;
      readonly mlPerH: number;
    }
  /** To the steps of a pump. */
  | {
      readonly step: "pump-step";
      readonly exactMlPerH: number;
      readonly mlPerH: number;
      readonly errorPercent: number;
    }
  /** What the infusion brings in its first hour, beside the fluid that a child of this weight needs in one. */
  | {
      readonly step: "first-hour";
      readonly ml: number;
      readonly allowanceMl: number;
      readonly sharePercent: number;
    }
  /** To an energy the device can be set to. */
  | {
      readonly step: "device-step";
      readonly exactJ: number;
      readonly settingJ: number;
      readonly errorPercent: number;
    }
  /** Fluid that the dose is added to. */
  | { readonly step: "added-to"; readonly ml: number; readonly diluent: string }
  /** A syringe by weight that is not made up for a child of this weight. */
  | {
      readonly step: "preparation-left-out";
      readonly perKg: Dose;
      readonly totalMl: number;
      readonly kg: number;
      readonly lowKg?: number;
      readonly highKg?: number;
    }
  /** What goes into the syringe of an infusion, and what each mL then holds. */
  | {
      readonly step: "preparation";
      readonly kind: "fixed" | "per-kg";
      readonly amount: Dose;
      readonly perKg?: Dose;
      readonly kg?: number;
      readonly totalMl: number;
      readonly diluent: string;
      readonly concentration: Concentration;
    }
  /** perKg x kg (x 60 when per minute) over the concentration = mlPerH. */
  | {
      readonly step: "rate";
      readonly perKg: Dose;
      readonly per: PerTime;
      readonly basis: Basis;
      readonly kg: number;
      readonly concentration: Concentration;
      readonly exactMlPerH: number;
      readonly mlPerH: number;
      readonly errorPercent: number;
    };
