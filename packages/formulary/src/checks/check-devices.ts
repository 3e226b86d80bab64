import type { Formulary } from "@steelyard/core/dosing";
import type { FormularyFault } from "../formulary-fault.ts";

/** The energies of the devices rise; the engine takes the nearest. */
export function checkDevices({ deviceEnergiesJ }: Formulary): FormularyFault[] {
  return deviceEnergiesJ.flatMap((joules, index) => {
    const before = deviceEnergiesJ[index - 1];
    return before === undefined || joules > before
      ? []
      : [{ place: "device energies", message: `${joules} J stands after ${before} J: they must rise` }];
  });
}
