export { usualBladders } from "./blood-pressure-cuff.ts";
export { computeEquipment, type EquipmentInput } from "./compute-equipment.ts";
export type {
  Bladder,
  EquipmentChoice,
  EquipmentGapLine,
  EquipmentItem,
  EquipmentKind,
  EquipmentLine,
  EquipmentNote,
  EquipmentSizeLine,
  EquipmentValue,
  EquipmentWord,
} from "./equipment-line.ts";
