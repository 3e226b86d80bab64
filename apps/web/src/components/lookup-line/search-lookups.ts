import type { ChildReport } from "@steelyard/core/child";
import { describeEquipmentItem, describeSign } from "@steelyard/core/wording";
import { messages } from "../../messages/index.ts";
import { language } from "../../messages/language.ts";
import { plainText } from "../../state/plain-text.ts";

type Lookups = Pick<ChildReport, "equipment" | "signs">;

/** The ids of equipment and normal signs whose name, or the name of their group, holds every word. */
export function searchLookups(
  { equipment, signs }: Lookups,
  search: string,
): Readonly<Record<keyof Lookups, readonly string[]>> {
  const words = plainText(search).split(/\s+/).filter(Boolean);
  const holds = (group: keyof Lookups, name: string): boolean => {
    const text = plainText(`${name} ${messages.lookup.groups[group]}`);
    return words.every((word) => text.includes(word));
  };
  return {
    equipment: equipment
      .filter((line) => holds("equipment", describeEquipmentItem(line, language?.lookup)))
      .map(({ id }) => id),
    signs: signs.filter((line) => holds("signs", describeSign(line, language?.lookup))).map(({ id }) => id),
  };
}
