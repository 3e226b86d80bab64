import * as growth from "@steelyard/core/growth";

type Standard = growth.GrowthStandard<number, number>;

/** Every standard that `@steelyard/core/growth` exports, by the name of its export, with its units set aside. */
export const growthStandards: ReadonlyMap<string, Standard> = new Map(
  Object.entries(growth).flatMap(([name, value]) =>
    typeof value === "object" && "lms" in value ? [[name, value as unknown as Standard] as const] : [],
  ),
);

export function growthStandard(name: string): Standard {
  const standard = growthStandards.get(name);
  if (!standard) throw new Error(`No growth standard is exported as ${name}`);
  return standard;
}
