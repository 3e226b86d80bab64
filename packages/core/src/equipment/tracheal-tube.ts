import {
  type AgeBasis,
  ageParts,
  type Band,
  bandAt,
  type ChildSize,
  COMMON_PRACTICE,
  cite,
  type LookupSource,
  type LookupStep,
  linear,
  NEWBORN_MONTHS,
  yearsOf,
} from "../lookup/index.ts";
import type { EquipmentChoice, EquipmentLine } from "./equipment-line.ts";
import { gapLine, itemLine, withReason } from "./item-line.ts";

type TubeChoice = EquipmentChoice & { readonly value: number };

/** An age rule: a table for the first two years, then age / 4 + plus. */
interface AgeRule {
  readonly bands: readonly Band<number>[];
  readonly plusMm: number;
  readonly sources: readonly LookupSource[];
}

const AHA: LookupSource = {
  sourceId: "aha-2010-paediatric",
  locator: "endotracheal tube size",
  verification: "memory",
};
const COLE: LookupSource = { sourceId: "park2022", locator: "age / 4 + 4", verification: "read" };

const UNCUFFED: AgeRule = {
  bands: [
    { low: 0, high: 12, value: 3.5 },
    { low: 12, high: 24, value: 4 },
  ],
  plusMm: 4,
  sources: [COLE, AHA],
};

const CUFFED: AgeRule = {
  bands: [
    { low: 0, high: 12, value: 3 },
    { low: 12, high: 24, value: 3.5 },
  ],
  plusMm: 3.5,
  sources: [
    { sourceId: "tonsillectomy-tube-size", locator: "age / 4 + 3.5", verification: "read" },
    AHA,
    { sourceId: "rcuk-2021-paediatric", locator: "cuffed tubes except in newborns", verification: "read" },
  ],
};

const CUFFED_SMALLER: AgeRule = {
  bands: CUFFED.bands,
  plusMm: 3,
  sources: [{ sourceId: "khine1997", locator: "age / 4 + 3", verification: "memory" }],
};

/** Uncuffed, under 2 kg. @source neonatal-resuscitation-textbook */
const PRETERM: readonly Band<number>[] = [
  { low: 0, high: 1, value: 2.5 },
  { low: 1, high: 2, value: 3 },
];

/** length / 30 + 2 uncuffed; a cuffed tube is half a size smaller. */
const LENGTH_PLUS_MM = { uncuffed: 2, cuffed: 1.5 } as const;
const LENGTH_FROM_CM = 50;

/** From here on adult sizes apply: 7.0 cuffed, 7.5 uncuffed by either rule, with the sizes beside them. @source common-practice */
const HELD_AT_MONTHS = 168;
const HELD_AT_CM = 165;

/** Cuffed tubes are made for children from this weight on. @source aha-2010-paediatric, 3 to 3.5 kg in print */
const CUFFED_FROM_KG = 3;

/** The sizes that the rules give for this child, the one shown first at the front; none where nothing is known. */
export function tubeChoices(child: ChildSize, kind: "cuffed" | "uncuffed"): readonly TubeChoice[] {
  if (kind === "cuffed" && child.totalKg < CUFFED_FROM_KG) return [];
  const preterm = kind === "uncuffed" ? bandAt(PRETERM, "total-weight", child.totalKg) : undefined;
  const byWeight: TubeChoice[] = preterm
    ? [
        {
          value: preterm.value,
          unit: "mm",
          rests: ["total-weight"],
          working: [preterm.step],
          sources: cite([{ sourceId: "neonatal-resuscitation-textbook", verification: "memory" }]),
        },
      ]
    : [];
  const byLength = lengthChoice(child, kind);
  const rules = kind === "cuffed" ? [CUFFED, CUFFED_SMALLER] : [UNCUFFED];
  const { age } = child;
  const byAge = age === undefined ? [] : rules.map((rule) => ageChoice(age, rule));
  if (byWeight.length > 0) return [...byWeight, ...byAge];
  return age?.from === "age"
    ? withReason([...byAge, ...byLength], byLength.length > 0 ? "age-known" : undefined)
    : withReason([...byLength, ...byAge], byLength.length > 0 ? "length-before-height-age" : undefined);
}

/** One line each for cuffed and uncuffed tubes: internal diameter in mm. */
export function trachealTube(child: ChildSize, kind: "cuffed" | "uncuffed"): EquipmentLine {
  const head = { item: "tracheal-tube", kind } as const;
  const [first, ...others] = tubeChoices(child, kind);
  const { age, totalKg } = child;
  if (first === undefined) {
    return kind === "cuffed" && totalKg < CUFFED_FROM_KG
      ? gapLine(
          head,
          { type: "outside-rule", by: "total-weight", value: totalKg, low: CUFFED_FROM_KG },
          CUFFED.sources,
        )
      : gapLine(head, { type: "needs", oneOf: ["age", "length"] }, [AHA]);
  }
  const isNewborn = age?.from === "age" && age.ageMonths < NEWBORN_MONTHS;
  return itemLine(head, child, [first, ...others], {
    ready: [first.value - 0.5, first.value + 0.5],
    notes: kind === "cuffed" ? ["cuff-pressure"] : [],
    warnings: kind === "cuffed" && isNewborn ? [{ type: "newborn" }] : [],
    differBeyond: 0,
  });
}

function ageChoice(age: AgeBasis, { bands, plusMm, sources }: AgeRule): TubeChoice {
  const { rests, working } = ageParts(age);
  const band = bandAt(bands, "age", age.ageMonths);
  if (band !== undefined) {
    return { value: band.value, unit: "mm", rests, working: [...working, band.step], sources: cite(sources) };
  }
  const held = age.ageMonths > HELD_AT_MONTHS;
  const steps: LookupStep[] = held
    ? [{ step: "held", by: "age", value: age.ageMonths, at: HELD_AT_MONTHS }]
    : [];
  const years = held ? HELD_AT_MONTHS / 12 : yearsOf(age);
  const { value, working: sizing } = sized(linear({ by: "age", over: 4, plus: plusMm, unit: "mm" }, years));
  return { value, unit: "mm", rests, working: [...working, ...steps, ...sizing], sources: cite(sources) };
}

function lengthChoice({ lengthCm }: ChildSize, kind: "cuffed" | "uncuffed"): TubeChoice[] {
  if (lengthCm === undefined || lengthCm < LENGTH_FROM_CM) return [];
  const held = lengthCm > HELD_AT_CM;
  const rule = { by: "length", over: 30, plus: LENGTH_PLUS_MM[kind], unit: "mm" } as const;
  const { value, working } = sized(linear(rule, held ? HELD_AT_CM : lengthCm));
  const steps: LookupStep[] = held ? [{ step: "held", by: "length", value: lengthCm, at: HELD_AT_CM }] : [];
  return [
    {
      value,
      unit: "mm",
      rests: ["length"],
      working: [...steps, ...working],
      sources: cite([
        { sourceId: "wang1997", locator: "length / 30 + 2 mm, uncuffed", verification: "memory" },
        ...(kind === "cuffed" ? [{ ...COMMON_PRACTICE, locator: "cuffed half a size less" }] : []),
      ]),
    },
  ];
}

/** To the nearest half millimetre; of two as near, the smaller. */
function sized(step: Extract<LookupStep, { step: "linear" }>): {
  readonly value: number;
  readonly working: readonly LookupStep[];
} {
  const value = Math.ceil(step.result * 2 - 0.5) / 2;
  const rounding: LookupStep = {
    step: "size",
    exact: step.result,
    to: "nearest",
    result: value,
    unit: "mm",
  };
  return { value, working: [step, rounding] };
}
