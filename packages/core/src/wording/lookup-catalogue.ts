import type { EquipmentItem, EquipmentKind, EquipmentNote, EquipmentWord } from "../equipment/index.ts";
import type { ChosenBecause, LookupGap, LookupRest, LookupStep, LookupWarning } from "../lookup/index.ts";
import type { Sign, SignKind } from "../signs/index.ts";
import type { Block } from "./caution-block.ts";
import type { ValueWords } from "./value-words.ts";

type ByStep = { [V in LookupStep as V["step"]]: (step: V) => string };
type ByType<T extends { readonly type: string }> = { [V in T as V["type"]]: (value: V) => string };

/**
 * One language of equipment and signs: names, and a sentence for every step, warning and reason.
 *
 * The keys follow from the types themselves, so that a new step does not compile before it has its sentence.
 */
export interface LookupCatalogue {
  readonly equipmentBlock: Block;
  readonly signsBlock: Block;
  readonly item: Readonly<Record<EquipmentItem, string>>;
  readonly kind: Readonly<Record<EquipmentKind, string>>;
  readonly word: Readonly<Record<EquipmentWord, string>>;
  readonly note: Readonly<Record<EquipmentNote, string>>;
  readonly shape: Readonly<Record<"straight" | "curved", string>>;
  readonly sign: Readonly<Record<Sign, string>>;
  readonly signKind: Readonly<Record<SignKind, string>>;
  readonly rest: Readonly<Record<LookupRest, string>>;
  readonly because: Readonly<Record<ChosenBecause, string>>;
  readonly perMinute: string;
  readonly values: ValueWords;
  /** Between what a value rests on. */
  readonly and: string;
  readonly bladder: (bladder: { readonly width: string; readonly lengthCm: number }) => string;
  /** The sum itself, within a sentence: "age 4 years ÷ 4 + 3.5". */
  readonly rule: (step: Extract<LookupStep, { step: "linear" }>) => string;
  readonly step: ByStep;
  readonly warning: ByType<LookupWarning>;
  readonly gap: ByType<LookupGap>;
}
