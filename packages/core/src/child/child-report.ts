import type { BodyWarning, MeasurementName, SiteIdentity } from "../body/index.ts";
import type { SheetLine } from "../dosing/index.ts";
import type { EquipmentLine } from "../equipment/index.ts";
import type { SignLine } from "../signs/index.ts";

/** Everything computed for one child: the value behind the screen, the paper and `steelyard child --json`. */
export interface ChildReport {
  readonly weight: {
    readonly totalKg: number;
    readonly low95Kg: number;
    readonly high95Kg: number;
    readonly idealKg?: number;
    readonly adjustedKg?: number;
    readonly leanKg?: number;
    readonly rests: readonly MeasurementName[];
  };
  readonly sheet: readonly SheetLine[];
  readonly equipment: readonly EquipmentLine[];
  readonly signs: readonly SignLine[];
  readonly warnings: readonly BodyWarning[];
  readonly versions: {
    readonly software: string;
    readonly model: string;
    readonly formulary: string;
    readonly formularySigned: boolean;
    /** The site whose calibration was used; absent where none was. */
    readonly site?: SiteIdentity;
  };
}
