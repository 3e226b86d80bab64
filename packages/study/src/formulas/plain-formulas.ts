/** What a plain formula may use of a child. */
export interface FormulaChild {
  readonly lengthCm?: number;
  readonly armMm?: number;
  /** Exact age in months; the formulas take completed ones. */
  readonly ageMonths?: number;
}

/** A weight by a plain published formula. */
export interface PlainFormula {
  readonly name: string;
  readonly sourceId: string;
  /** What it gives: the child's weight, or an ideal weight (then its error tells how far children are from ideal). */
  readonly gives: "total" | "ideal";
  /** Undefined where the formula does not apply, or the child lacks what it needs. */
  readonly estimateKg: (child: FormulaChild) => number | undefined;
}

/** Standing height is the lying length - 0.7 cm (WHO rule). @source who-anthro */
const lyingMinusStandingCm = 0.7;

/** Formulas of clinical practice and of papers, as printed there: ages in completed years or months. */
export const plainFormulas: readonly PlainFormula[] = [
  {
    name: "2 × (age + 4), 1 to 10 years (handbooks of the United Kingdom, Australia and New Zealand)",
    sourceId: "christchurch-icu-handbook",
    gives: "total",
    estimateKg: byYears({ from: 1, to: 10, kg: (years) => 2 * (years + 4) }),
  },
  {
    name: "months / 2 + 4 under 1 year, 2 × age + 8 to 5, 3 × age + 7 to 12 (Advanced Paediatric Life Support, 2011)",
    sourceId: "alsg-apls-2011",
    gives: "total",
    estimateKg: either(
      byMonths({ to: 11, kg: (months) => months / 2 + 4 }),
      byYears({ from: 1, to: 5, kg: (years) => 2 * years + 8 }),
      byYears({ from: 6, to: 12, kg: (years) => 3 * years + 7 }),
    ),
  },
  {
    name: "3 × age + 7, 1 to 10 years (Luscombe and Owens 2007)",
    sourceId: "luscombe2007",
    gives: "total",
    estimateKg: byYears({ from: 1, to: 10, kg: (years) => 3 * years + 7 }),
  },
  {
    name: "(months + 9) / 2 under 1 year, 2 × (age + 5) to 4, 4 × age to 14 (Tinning and Acworth 2007)",
    sourceId: "tinning2007",
    gives: "total",
    estimateKg: either(
      byMonths({ to: 11, kg: (months) => (months + 9) / 2 }),
      byYears({ from: 1, to: 4, kg: (years) => 2 * (years + 5) }),
      byYears({ from: 5, to: 14, kg: (years) => 4 * years }),
    ),
  },
  {
    name: "exp(0.175571 × age + 2.197099), 1 to 10 years (Theron and others 2005)",
    sourceId: "theron2005",
    gives: "total",
    estimateKg: byYears({ from: 1, to: 10, kg: (years) => Math.exp(0.175571 * years + 2.197099) }),
  },
  {
    name: "3 × (arm in cm - 10), 1 to 11 years (Cattermole and others 2010)",
    sourceId: "cattermole2010",
    gives: "total",
    estimateKg: ({ ageMonths, armMm }) =>
      armMm === undefined || !isWithin(ageMonths, { from: 1, to: 11 }) || armMm <= 100
        ? undefined
        : 3 * (armMm / 10 - 10),
  },
  {
    name: "1.65 × height² / 1,000, 1 to 17 years, ideal weight (Traub and Johnson 1980)",
    sourceId: "traub1980",
    gives: "ideal",
    estimateKg: ({ ageMonths, lengthCm }) =>
      lengthCm !== undefined && isWithin(ageMonths, { from: 1, to: 17 })
        ? (1.65 * (lengthCm - lyingMinusStandingCm) ** 2) / 1000
        : undefined,
  },
  {
    name: "2.396 × exp(0.01863 × height), above 74 cm, ideal weight (Traub and Kichen 1983)",
    sourceId: "traub1983",
    gives: "ideal",
    estimateKg: ({ lengthCm }) => {
      if (lengthCm === undefined) return undefined;
      const heightCm = lengthCm - lyingMinusStandingCm;
      return heightCm > 74 ? 2.396 * Math.exp(0.01863 * heightCm) : undefined;
    },
  },
];

type Formula = PlainFormula["estimateKg"];

function isWithin(ageMonths: number | undefined, { from, to }: { from: number; to: number }): boolean {
  return ageMonths !== undefined && ageMonths >= 12 * from && ageMonths < 12 * (to + 1);
}

/** In completed years, `to` included. */
function byYears({ from, to, kg }: { from: number; to: number; kg: (years: number) => number }): Formula {
  return ({ ageMonths }) =>
    isWithin(ageMonths, { from, to }) ? kg(Math.floor((ageMonths as number) / 12)) : undefined;
}

/** In completed months, `to` included. */
function byMonths({ to, kg }: { to: number; kg: (months: number) => number }): Formula {
  return ({ ageMonths }) =>
    ageMonths === undefined || ageMonths < 0 || ageMonths >= to + 1 ? undefined : kg(Math.floor(ageMonths));
}

function either(...formulas: readonly Formula[]): Formula {
  return (child) => {
    for (const formula of formulas) {
      const kg = formula(child);
      if (kg !== undefined) return kg;
    }
    return undefined;
  };
}
