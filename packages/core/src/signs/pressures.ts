import {
  type AgeBasis,
  ageParts,
  type Band,
  bandAt,
  type ChildSize,
  cite,
  type LookupSource,
  type LookupStep,
  type LookupWarning,
  linear,
  NEWBORN_MONTHS,
  yearsOf,
} from "../lookup/index.ts";
import type { SignKind, SignLine, SignValue } from "./sign-line.ts";
import { signGap, signLine } from "./value-line.ts";

const PALS: LookupSource = {
  sourceId: "aha-2010-paediatric",
  locator: "hypotension",
  verification: "memory",
};
const HAQUE: LookupSource = { sourceId: "haque2007", verification: "read" };
const CENTILES: LookupSource = { sourceId: "crit-care-2019-hypotension", verification: "read" };

/** The systolic limit where it is a number, mmHg; from 1 to 10 years it is 70 + 2 x age. @source aha-2010-paediatric */
const FIXED_LIMITS: readonly Band<number>[] = [
  { low: 0, high: NEWBORN_MONTHS, value: 60 },
  { low: NEWBORN_MONTHS, high: 12, value: 70 },
  { low: 120, value: 90 },
];

/** From here on the limit lies below the 5th centile. @source crit-care-2019-hypotension */
const BELOW_CENTILE_MONTHS = 144;

/** plus + perYear x age, mmHg, from lowMonths to highMonths. */
interface LineRule {
  readonly perYear: number;
  readonly plus: number;
  readonly lowMonths: number;
  readonly highMonths: number;
  readonly source: LookupSource;
}

const year = 12;
const haque = { lowMonths: year, highMonths: 17 * year, source: HAQUE };
const SYSTOLIC_FIFTH: LineRule = { perYear: 2, plus: 65, ...haque };
const MEAN_FIFTH: LineRule = { perYear: 1.5, plus: 40, ...haque };
const MEAN_MEDIAN: LineRule = { perYear: 1.5, plus: 55, ...haque };
const SYSTOLIC_MEDIAN: LineRule = {
  perYear: 2,
  plus: 90,
  lowMonths: year,
  highMonths: 10 * year,
  source: { ...PALS, locator: "90 + 2 x age" },
};

/** Limits and medians of systolic and mean arterial pressure, mmHg. */
export function pressures(child: ChildSize): readonly SignLine[] {
  return [
    systolicLimit(child),
    lineOf(child, "systolic-pressure", "fifth-centile", SYSTOLIC_FIFTH),
    lineOf(child, "systolic-pressure", "median", SYSTOLIC_MEDIAN),
    lineOf(child, "mean-pressure", "fifth-centile", MEAN_FIFTH),
    lineOf(child, "mean-pressure", "median", MEAN_MEDIAN),
  ];
}

function systolicLimit(child: ChildSize): SignLine {
  const head = { sign: "systolic-pressure", kind: "lower-limit" } as const;
  const { age } = child;
  if (age === undefined) return signGap(head, { type: "needs", oneOf: ["age", "length"] }, [PALS]);
  const { rests, working } = ageParts(age);
  const fixed = bandAt(FIXED_LIMITS, "age", age.ageMonths);
  const step: LookupStep =
    fixed?.step ?? linear({ by: "age", times: 2, plus: 70, unit: "mmHg" }, yearsOf(age));
  const value = fixed?.value ?? (step.step === "linear" ? step.result : 0);
  const limit: SignValue = {
    value: Math.round(value),
    unit: "mmHg",
    rests,
    working: [...working, step],
    sources: cite([PALS, CENTILES]),
  };
  const warnings: readonly LookupWarning[] =
    age.ageMonths >= BELOW_CENTILE_MONTHS ? [{ type: "below-fifth-centile" }] : [];
  return signLine(head, child, [limit], { warnings });
}

function lineOf(
  child: ChildSize,
  sign: "systolic-pressure" | "mean-pressure",
  kind: SignKind,
  rule: LineRule,
): SignLine {
  const head = { sign, kind };
  const { age } = child;
  if (age === undefined) return signGap(head, { type: "needs", oneOf: ["age", "length"] }, [rule.source]);
  if (age.ageMonths < rule.lowMonths) {
    const unavailable = {
      type: "outside-rule",
      by: "age",
      value: age.ageMonths,
      low: rule.lowMonths,
    } as const;
    return signGap(head, unavailable, [rule.source]);
  }
  return signLine(head, child, [lineValue(age, rule)]);
}

/** Past the end of the rule its last value. */
function lineValue(age: AgeBasis, { perYear, plus, highMonths, source }: LineRule): SignValue {
  const { rests, working } = ageParts(age);
  const isHeld = age.ageMonths > highMonths;
  const held: LookupStep[] = isHeld
    ? [{ step: "held", by: "age", value: age.ageMonths, at: highMonths }]
    : [];
  const years = isHeld ? highMonths / year : yearsOf(age);
  const step = linear({ by: "age", times: perYear, plus, unit: "mmHg" }, years);
  return {
    value: Math.round(step.result),
    unit: "mmHg",
    rests,
    working: [...working, ...held, step],
    sources: cite([source]),
  };
}
