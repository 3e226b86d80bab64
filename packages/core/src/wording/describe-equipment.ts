import type { EquipmentChoice, EquipmentLine, EquipmentNote } from "../equipment/index.ts";
import type { Block } from "./caution-block.ts";
import { ENGLISH_LOOKUP } from "./english-lookup.ts";
import type { LookupCatalogue } from "./lookup-catalogue.ts";
import { writeLookupValue, writeTubeMm } from "./write-lookup.ts";

/**
 * The heading of the equipment and what stands under it.
 *
 * ```ts
 * import { equipmentBlock } from "@steelyard/core/wording";
 * import assert from "node:assert/strict";
 * assert.equal(equipmentBlock().title, "Equipment");
 * ```
 */
export function equipmentBlock(catalogue: LookupCatalogue = ENGLISH_LOOKUP): Block {
  return catalogue.equipmentBlock;
}

/**
 * The name of an item: "Tracheal tube, cuffed".
 *
 * ```ts
 * import { describeEquipmentItem } from "@steelyard/core/wording";
 * import assert from "node:assert/strict";
 * assert.equal(describeEquipmentItem({ item: "tracheal-tube", kind: "cuffed" }), "Tracheal tube, cuffed");
 * ```
 */
export function describeEquipmentItem(
  { item, kind }: Pick<EquipmentLine, "item" | "kind">,
  catalogue: LookupCatalogue = ENGLISH_LOOKUP,
): string {
  return kind === undefined ? catalogue.item[item] : `${catalogue.item[item]}, ${catalogue.kind[kind]}`;
}

/**
 * A size as it is asked for: "5.0 mm", "size 2, curved", "9 cm wide, 27 cm long", "450 to 500 mL", "round".
 *
 * `item` decides how millimetres are written: of a tracheal tube with one decimal, always.
 *
 * ```ts
 * import { describeEquipmentSize } from "@steelyard/core/wording";
 * import assert from "node:assert/strict";
 * const size = describeEquipmentSize("tracheal-tube", { value: 5, unit: "mm" });
 * assert.equal(size.replaceAll("\u00a0", " "), "5.0 mm");
 * ```
 */
export function describeEquipmentSize(
  item: EquipmentLine["item"],
  {
    value,
    unit,
    shape,
    bladderLengthCm,
  }: Pick<EquipmentChoice, "value" | "unit" | "shape" | "bladderLengthCm">,
  catalogue: LookupCatalogue = ENGLISH_LOOKUP,
): string {
  if (typeof value === "string") return catalogue.word[value];
  if (item === "tracheal-tube" && typeof value === "number") return writeTubeMm(value, catalogue.values);
  if (unit === undefined) throw new RangeError(`Cannot describe a size as ${item} must have a unit`);
  const size = writeLookupValue({ value, unit, perMinute: catalogue.perMinute }, catalogue.values);
  if (bladderLengthCm !== undefined) return catalogue.bladder({ width: size, lengthCm: bladderLengthCm });
  return shape === undefined ? size : `${size}, ${catalogue.shape[shape]}`;
}

/**
 * What belongs to an item whatever its size, as one sentence.
 *
 * ```ts
 * import { describeEquipmentNote } from "@steelyard/core/wording";
 * import assert from "node:assert/strict";
 * assert.match(describeEquipmentNote("confirm-position"), /capnography/);
 * ```
 */
export function describeEquipmentNote(
  note: EquipmentNote,
  catalogue: LookupCatalogue = ENGLISH_LOOKUP,
): string {
  return catalogue.note[note];
}
