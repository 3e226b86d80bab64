import { type Quantity, quantityValue } from "@steelyard/core/body";
import type { FitChild } from "./fit-child.ts";

/** The quantity of a child in the model's own unit; undefined when it was not measured. */
export function quantityOf(child: FitChild, quantity: Quantity): number | undefined {
  switch (quantity) {
    case "weight":
      return child.weightKg;
    case "length":
      return child.lengthCm;
    case "arm":
      return child.armMm;
    case "waist":
      return child.waistCm;
    case "thigh":
      return child.thighCm;
    case "calf":
      return child.calfCm;
    case "head":
      return child.headCm;
    case "age":
      return child.ageMonths === undefined ? undefined : quantityValue("ageMonths", child.ageMonths);
  }
}
