import {
  ageWarnings,
  type ChildSize,
  type ChosenBecause,
  cite,
  type LookupGap,
  type LookupSource,
  type LookupWarning,
} from "../lookup/index.ts";
import type {
  EquipmentChoice,
  EquipmentGapLine,
  EquipmentItem,
  EquipmentKind,
  EquipmentNote,
  EquipmentSizeLine,
} from "./equipment-line.ts";

export interface ItemHead {
  readonly item: EquipmentItem;
  readonly kind?: EquipmentKind;
}

interface SizeParts {
  readonly notes?: readonly EquipmentNote[];
  readonly ready?: readonly number[];
  readonly warnings?: readonly LookupWarning[];
  /** Where rules on different measurements give numbers further apart than this, the line says so. */
  readonly differBeyond?: number;
}

/** A line for the first of the choices, with the others beside it and every mark that follows from them. */
export function itemLine(
  head: ItemHead,
  child: ChildSize,
  [first, ...alternatives]: readonly [EquipmentChoice, ...EquipmentChoice[]],
  { notes = [], ready, warnings = [], differBeyond }: SizeParts = {},
): EquipmentSizeLine {
  const choices = [first, ...alternatives];
  const usesHeightAge = choices.some(({ rests }) => rests.includes("height-age"));
  return {
    ...named(head),
    ...first,
    alternatives,
    ...(ready !== undefined && { ready }),
    notes,
    warnings: [
      ...(usesHeightAge && child.age !== undefined ? ageWarnings(child.age) : []),
      ...heldWarnings(first),
      ...(differBeyond === undefined ? [] : differences(choices, differBeyond)),
      ...warnings,
    ],
  };
}

/** A line without a size. */
export function gapLine(
  head: ItemHead,
  unavailable: LookupGap,
  sources: readonly LookupSource[],
): EquipmentGapLine {
  return { ...named(head), unavailable, rests: [], working: [], warnings: [], sources: cite(sources) };
}

/** Says why the first choice stands before the others; nothing where there is no other, or no reason. */
export function withReason<Choice extends EquipmentChoice>(
  [first, ...others]: readonly Choice[],
  because: ChosenBecause | undefined,
): readonly Choice[] {
  if (first === undefined) return [];
  if (because === undefined || others.length === 0) return [first, ...others];
  return [{ ...first, working: [...first.working, { step: "chosen", because }] }, ...others];
}

function named({ item, kind }: ItemHead): ItemHead & { readonly id: string } {
  return kind === undefined ? { id: item, item } : { id: `${item}.${kind}`, item, kind };
}

function heldWarnings({ working }: EquipmentChoice): LookupWarning[] {
  return working.flatMap((step) =>
    step.step === "held" ? [{ type: "held", by: step.by, at: step.at }] : [],
  );
}

/** Of the rules that rest on different things, the first of each: another rule on the same thing is listed, not warned of. */
function differences(choices: readonly EquipmentChoice[], beyond: number): LookupWarning[] {
  const firstByRests = new Map<string, number>();
  for (const { rests, value } of choices) {
    const on = rests.join();
    if (typeof value === "number" && !firstByRests.has(on)) firstByRests.set(on, value);
  }
  const low = Math.min(...firstByRests.values());
  const high = Math.max(...firstByRests.values());
  const unit = choices[0]?.unit;
  return unit !== undefined && high - low > beyond ? [{ type: "rules-differ", low, high, unit }] : [];
}
