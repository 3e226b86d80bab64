/** What one table file is made from and says of itself. */
export interface TablePlan {
  readonly id: string;
  readonly sourceId: string;
  readonly acknowledgement: string;
  readonly index: { readonly name: string; readonly unit: string };
  readonly value: { readonly name: string; readonly unit: string };
  /** WHO's rule: beyond 3 SD the distance between 2 and 3 SD is the unit. */
  readonly adjustedBeyond3Sd: boolean;
  /** Age in days from which the rows hold standing height instead of lying length. */
  readonly standingFromDays?: number;
  /** Rows to take: source and indicator as in the file, bounds on x, and a shift of x. */
  readonly parts: readonly {
    readonly source: string;
    readonly indicator: string;
    readonly low?: number;
    readonly high?: number;
    readonly shift?: number;
  }[];
}

const who2006 =
  "WHO Child Growth Standards, World Health Organization, 2006. Figures as published, rearranged.";
const who2007 =
  "WHO Growth Reference for 5-19 years, World Health Organization, 2007 (de Onis et al, Bull World Health Organ 2007;85:660-667). Figures as published, rearranged.";
const cdc2000 =
  "CDC Growth Charts: United States, Centers for Disease Control and Prevention, National Center for Health Statistics, 2000. Public domain. Figures rounded to stay within 0.0005 z.";
const mramba2017 =
  "Mramba L et al, A growth reference for mid upper arm circumference for age among school age children and adolescents, BMJ 2017;358:j3423. Figures as published, rearranged.";

const ageDays = { name: "age", unit: "day" };
const ageMonths = { name: "age", unit: "month" };
const weight = { name: "weight", unit: "kg" };
const bmi = { name: "body mass index", unit: "kg/m2" };
const head = { name: "head circumference", unit: "cm" };
const arm = { name: "mid-upper-arm circumference", unit: "cm" };
const length = { name: "lying length", unit: "cm" };
const height = { name: "standing height", unit: "cm" };

const from2006 = (indicator: string) => [{ source: "WHO2006", indicator }];
// The first and the last row of each 2007 table pad it for interpolation; the reference begins at 61 months.
const from2007 = (indicator: string, high: number) => [{ source: "WHO2007", indicator, low: 61, high }];
const fromCdc = (indicator: string) => [{ source: "CDC2000", indicator }];

export const tablePlans: readonly TablePlan[] = [
  {
    id: "who-2006-weight-for-length",
    sourceId: "who-growth-2006",
    acknowledgement: `${who2006} Rows above 110 cm are those of weight for height, 0.7 cm added; where the two tables overlap they agree to the last digit.`,
    index: length,
    value: weight,
    adjustedBeyond3Sd: true,
    parts: [
      { source: "WHO2006", indicator: "weight_for_length_kg" },
      { source: "WHO2006", indicator: "weight_for_height_kg", shift: 0.7 },
    ],
  },
  {
    id: "who-2006-length-height-for-age",
    sourceId: "who-growth-2006",
    acknowledgement: who2006,
    index: ageDays,
    value: { name: "lying length under 731 days, standing height from then on", unit: "cm" },
    adjustedBeyond3Sd: false,
    standingFromDays: 731,
    parts: from2006("length_height_for_age_cm"),
  },
  {
    id: "who-2006-weight-for-age",
    sourceId: "who-growth-2006",
    acknowledgement: who2006,
    index: ageDays,
    value: weight,
    adjustedBeyond3Sd: true,
    parts: from2006("weight_for_age_kg"),
  },
  {
    id: "who-2006-bmi-for-age",
    sourceId: "who-growth-2006",
    acknowledgement: who2006,
    index: ageDays,
    value: bmi,
    adjustedBeyond3Sd: true,
    standingFromDays: 731,
    parts: from2006("bmi_for_age"),
  },
  {
    id: "who-2006-head-circumference-for-age",
    sourceId: "who-growth-2006-head-arm",
    acknowledgement: who2006,
    index: ageDays,
    value: head,
    adjustedBeyond3Sd: false,
    parts: from2006("head_circumference_for_age_cm"),
  },
  {
    id: "who-2006-arm-circumference-for-age",
    sourceId: "who-growth-2006-head-arm",
    acknowledgement: who2006,
    index: ageDays,
    value: arm,
    adjustedBeyond3Sd: true,
    parts: from2006("arm_circumference_for_age_cm"),
  },
  {
    id: "who-2007-height-for-age",
    sourceId: "who-growth-2007",
    acknowledgement: who2007,
    index: ageMonths,
    value: height,
    adjustedBeyond3Sd: false,
    parts: from2007("height_for_age_cm", 228),
  },
  {
    id: "who-2007-bmi-for-age",
    sourceId: "who-growth-2007",
    acknowledgement: who2007,
    index: ageMonths,
    value: bmi,
    adjustedBeyond3Sd: true,
    parts: from2007("bmi_for_age", 228),
  },
  {
    id: "who-2007-weight-for-age",
    sourceId: "who-growth-2007",
    acknowledgement: who2007,
    index: ageMonths,
    value: weight,
    adjustedBeyond3Sd: true,
    parts: from2007("weight_for_age_kg", 120),
  },
  {
    id: "mramba-2017-arm-circumference-for-age",
    sourceId: "mramba-2017",
    acknowledgement: mramba2017,
    index: ageMonths,
    value: arm,
    adjustedBeyond3Sd: true,
    parts: [{ source: "Mramba2017", indicator: "arm_circumference_for_age_cm" }],
  },
  ...(
    [
      ["weight-for-age", "weight_for_age_kg", ageMonths, weight],
      ["length-for-age", "length_for_age_cm", ageMonths, length],
      ["stature-for-age", "stature_for_age_cm", ageMonths, height],
      ["bmi-for-age", "bmi_for_age", ageMonths, bmi],
      ["head-circumference-for-age", "head_circumference_for_age_cm", ageMonths, head],
      ["weight-for-length", "weight_for_length_kg", length, weight],
      ["weight-for-stature", "weight_for_stature_kg", height, weight],
    ] as const
  ).map(([name, indicator, index, value]) => ({
    id: `cdc-2000-${name}`,
    sourceId: "cdc-growth-2000",
    acknowledgement: cdc2000,
    index,
    value,
    adjustedBeyond3Sd: false,
    parts: fromCdc(indicator),
  })),
];
