import { parse } from "csv-parse/sync";

/** One child (and visit) of an open nutrition survey with weight, length and arm. */
export interface SurveyChild {
  /** `repository dataset`, as in the data's README. */
  readonly dataset: string;
  readonly country: string;
  readonly childId?: string;
  readonly sex?: "m" | "f";
  readonly ageMonths?: number;
  readonly lengthCm: number;
  readonly weightKg: number;
  readonly armMm: number;
}

export interface SurveyLoad {
  readonly children: readonly SurveyChild[];
  /** Rows left out, by dataset and reason. */
  readonly dropped: ReadonlyMap<string, ReadonlyMap<string, number>>;
}

/** Standing height + 0.7 cm is the lying length (WHO rule). */
const lyingMinusStandingCm = 0.7;
/** Where the position was not recorded: lying under 24 months, or under 87 cm when the age is unknown (WHO rule). */
const lyingBelow = { ageMonths: 24, lengthCm: 87 } as const;

/**
 * Reads the tidy survey file; rows without weight, length or arm and children with oedema are counted and left out.
 * Nothing else is cleaned: outliers and unit slips are part of what a survey is.
 *
 * @source nutrition-surveys
 * @source who-growth-2006
 */
export function readSurveys(text: string): SurveyLoad {
  const records: Record<string, string>[] = parse(text, { columns: true, skip_empty_lines: true });
  const dropped = new Map<string, Map<string, number>>();
  const children: SurveyChild[] = [];
  for (const record of records) {
    const dataset = `${record.source?.split("/").at(-1)} ${record.dataset}`;
    const drop = (reason: string): void => {
      const reasons = dropped.get(dataset) ?? new Map<string, number>();
      dropped.set(dataset, reasons.set(reason, (reasons.get(reason) ?? 0) + 1));
    };
    const value = (name: string): number | undefined => (record[name] ? Number(record[name]) : undefined);
    const weightKg = value("weight_kg");
    const heightCm = value("height_cm");
    const armMm = value("muac_mm");
    const ageMonths = value("age_months");
    if (weightKg === undefined) drop("no weight");
    else if (heightCm === undefined) drop("no length or height");
    else if (armMm === undefined) drop("no arm circumference");
    else if (record.oedema === "y") drop("oedema");
    else {
      const lying =
        record.position === "lying" ||
        (!record.position &&
          (ageMonths === undefined ? heightCm < lyingBelow.lengthCm : ageMonths < lyingBelow.ageMonths));
      const sex = record.sex?.toLowerCase();
      children.push({
        dataset,
        country: record.country ?? "",
        lengthCm: lying ? heightCm : heightCm + lyingMinusStandingCm,
        weightKg,
        armMm,
        ...(ageMonths === undefined ? {} : { ageMonths }),
        ...(sex === "m" || sex === "f" ? { sex } : {}),
        ...(record.child_id ? { childId: record.child_id } : {}),
      });
    }
  }
  return { children, dropped };
}

/** The children of the surveys whose weight is one: a few were entered as 0. */
export function weighedChildren({ children }: SurveyLoad): readonly SurveyChild[] {
  return children.filter(({ weightKg }) => weightKg > 0);
}
