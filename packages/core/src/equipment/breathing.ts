import {
  ageParts,
  type Band,
  bandAt,
  type ChildSize,
  COMMON_PRACTICE,
  cite,
  type LookupSource,
  type LookupStep,
  measurableMl,
  NEWBORN_MONTHS,
  type Span,
} from "../lookup/index.ts";
import type { EquipmentChoice, EquipmentLine, EquipmentWord } from "./equipment-line.ts";
import { gapLine, itemLine } from "./item-line.ts";

/** Volume of a self-inflating bag, mL, by weight in kg; from 20 to 25 kg either. @source common-practice */
const BAGS: readonly Band<Span>[] = [
  { low: 0, high: 2.5, value: { low: 240, high: 250 } },
  { low: 2.5, high: 25, value: { low: 450, high: 500 } },
  { low: 20, value: { low: 1500, high: 2000 } },
];

/** @source common-practice */
const MASKS: readonly Band<EquipmentWord>[] = [
  { low: 0, high: 12, value: "round-mask" },
  { low: 12, value: "shaped-mask" },
];

/** Breaths a minute on a ventilator to start with. @source common-practice */
const RATES: readonly Band<Span | number>[] = [
  { low: 0, high: NEWBORN_MONTHS, value: 40 },
  { low: NEWBORN_MONTHS, high: 12, value: { low: 25, high: 30 } },
  { low: 12, high: 144, value: 20 },
  { low: 144, value: { low: 12, high: 15 } },
];

/** mL per kg of ideal weight. @source common-practice */
const TIDAL_ML_PER_KG: Span = { low: 6, high: 8 };

const COMPRESSIONS: LookupSource = { sourceId: "aha-2020-highlights", verification: "read" };

/** Volume of the self-inflating bag, mL, by ideal weight; by total weight where no ideal weight is known. */
export function bag(child: ChildSize): EquipmentLine {
  const by = child.idealKg === undefined ? "total-weight" : "ideal-weight";
  const kg = child.idealKg ?? child.totalKg;
  const fitting = BAGS.filter(({ low, high }) => kg >= low && (high === undefined || kg < high));
  const [first, ...others] = fitting.map(({ low, high, value }): EquipmentChoice => {
    const step: LookupStep = { step: "band", by, value: kg, low, ...(high !== undefined && { high }) };
    return { value, unit: "mL", rests: [by], working: [step], sources: cite([COMMON_PRACTICE]) };
  });
  return itemLine({ item: "bag" }, child, [first as EquipmentChoice, ...others], {
    notes: ["see-chest-rise"],
  });
}

/** Shape of the face mask. */
export function mask(child: ChildSize): EquipmentLine {
  return byAgeLine(child, "mask", MASKS);
}

/** Airways whose size is held against the child's face. */
export function measuredAirways(child: ChildSize): readonly EquipmentLine[] {
  return [
    measured(child, "oropharyngeal-airway", "incisors-to-jaw-angle"),
    measured(child, "nasopharyngeal-airway", "nostril-to-tragus"),
  ];
}

/** Breaths a minute: on a ventilator to start with, and with a tube in place during compressions. */
export function ventilationRates(child: ChildSize): readonly EquipmentLine[] {
  return [
    byAgeLine(child, "ventilation-rate", RATES),
    itemLine({ item: "ventilation-rate", kind: "during-compressions" }, child, [
      { value: { low: 20, high: 30 }, unit: "/min", rests: [], working: [], sources: cite([COMPRESSIONS]) },
    ]),
  ];
}

function byAgeLine(
  child: ChildSize,
  item: "mask" | "ventilation-rate",
  bands: readonly Band<EquipmentChoice["value"]>[],
): EquipmentLine {
  const head = item === "mask" ? { item } : ({ item, kind: "ventilator" } as const);
  const { age } = child;
  const band = age && bandAt(bands, "age", age.ageMonths);
  if (age === undefined || band === undefined) {
    return gapLine(head, { type: "needs", oneOf: ["age", "length"] }, [COMMON_PRACTICE]);
  }
  const { rests, working } = ageParts(age);
  const choice: EquipmentChoice = {
    value: band.value,
    ...(item === "ventilation-rate" && { unit: "/min" as const }),
    rests,
    working: [...working, band.step],
    sources: cite([COMMON_PRACTICE]),
  };
  return itemLine(head, child, [choice], {
    notes: item === "mask" ? [] : ["end-expiratory-pressure"],
  });
}

function measured(
  child: ChildSize,
  item: "oropharyngeal-airway" | "nasopharyngeal-airway",
  value: EquipmentWord,
): EquipmentLine {
  return itemLine({ item }, child, [{ value, rests: [], working: [], sources: cite([COMMON_PRACTICE]) }]);
}

/** Tidal volume on ideal weight, mL. */
export function tidalVolume(child: ChildSize): EquipmentLine {
  const { idealKg: kg } = child;
  const source = { ...COMMON_PRACTICE, locator: "6 to 8 mL per kg of ideal weight" };
  if (kg === undefined) {
    return gapLine({ item: "tidal-volume" }, { type: "needs", oneOf: ["length"] }, [source]);
  }
  const result = {
    low: measurableMl(TIDAL_ML_PER_KG.low * kg),
    high: measurableMl(TIDAL_ML_PER_KG.high * kg),
  };
  return itemLine(
    { item: "tidal-volume" },
    child,
    [
      {
        value: result,
        unit: "mL",
        rests: ["ideal-weight"],
        working: [{ step: "per-kg", perKg: TIDAL_ML_PER_KG, by: "ideal-weight", kg, result, unit: "mL" }],
        sources: cite([source]),
      },
    ],
    { notes: ["see-chest-rise"] },
  );
}
