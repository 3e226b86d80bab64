import type { ChildRow } from "../nhanes/child-row.ts";
import type { FitChild } from "./fit-child.ts";

export interface Selection {
  readonly children: readonly FitChild[];
  /** How many rows went, by the first reason that applied, in the order of the rules. */
  readonly dropped: ReadonlyMap<string, number>;
}

/** Standing height + 0.7 cm is the lying length where only the height is known (WHO rule). */
const lyingMinusStandingCm = 0.7;

/**
 * Keeps the children the model is fitted to: 2 months to under 18 years with weight, length and arm.
 *
 * Weights taken in clothing or with an appliance and lengths marked "not straight" by the examiner are not
 * measurements of the child and are dropped; everything else stays, outliers included.
 *
 * @source nhanes
 * @source who-growth-2006
 */
export function selectChildren(rows: readonly ChildRow[]): Selection {
  const dropped = new Map<string, number>();
  const children: FitChild[] = [];
  const drop = (reason: string): void => {
    dropped.set(reason, (dropped.get(reason) ?? 0) + 1);
  };
  for (const row of rows) {
    const ageMonths = row.ageMonths ?? (row.ageYears >= 2 ? undefined : row.ageYears * 12);
    if (row.ageYears >= 18 || (ageMonths !== undefined && ageMonths >= 216)) drop("18 years or older");
    else if (ageMonths !== undefined && ageMonths < 2) drop("under 2 months (no arm was measured)");
    else if (row.weightKg === undefined) drop("no weight");
    else if (row.weightComment === 3) drop("weighed in clothing");
    else if (row.weightComment === 4) drop("weighed with a medical appliance");
    else if (row.recumbentLengthCm === undefined && row.standingHeightCm === undefined)
      drop("no length or height");
    else if (row.recumbentLengthCm !== undefined ? row.lengthComment === 3 : row.heightComment === 3)
      drop("length or height not straight");
    else if (row.armCm === undefined) drop("no arm circumference");
    else {
      const lengthCm = row.recumbentLengthCm ?? (row.standingHeightCm as number) + lyingMinusStandingCm;
      children.push({
        source: "NHANES",
        childId: row.seqn,
        sex: row.sex,
        lengthCm,
        weightKg: row.weightKg,
        // Published to 0.1 cm: the product is rounded so that 15.2 cm is 152 mm and not 151.99999999999997.
        armMm: Math.round(row.armCm * 100) / 10,
        // Published as completed months: the middle of the month is the best guess.
        ...(ageMonths === undefined ? {} : { ageMonths: ageMonths + 0.5 }),
        ...(row.waistCm === undefined ? {} : { waistCm: row.waistCm }),
        ...(row.thighCm === undefined ? {} : { thighCm: row.thighCm }),
        ...(row.calfCm === undefined ? {} : { calfCm: row.calfCm }),
        ...(row.headCm === undefined ? {} : { headCm: row.headCm }),
      });
    }
  }
  return { children, dropped };
}
