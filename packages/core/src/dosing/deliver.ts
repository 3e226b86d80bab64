import { compare, exactly, toNumber } from "../units/rational.ts";
import { type Delivered, type DrawnFrom, drawUp } from "./draw-up.ts";
import type { Medicine, VolumeRounding } from "./formulary.ts";
import { givePuffs } from "./give-puffs.ts";
import type { LimitedDose } from "./limited-dose.ts";
import { errorPercent, measureVolume } from "./measure-volume.ts";
import type { InhalerStrength, LiquidStrength } from "./strength.ts";
import { ROUNDING_TOLERANCE_PERCENT, type Syringe } from "./syringes.ts";
import type { WorkingStep } from "./working-step.ts";

/** What a dose is given with: the strengths of the use, the syringes and the devices of the site. */
export interface Means {
  readonly medicine: Medicine;
  readonly strengths: readonly LiquidStrength[];
  readonly inhalers: readonly InhalerStrength[];
  readonly syringes: readonly Syringe[];
  readonly deviceEnergiesJ: readonly number[];
  readonly rounding?: VolumeRounding | undefined;
}

/** From the dose that is asked for to the dose that can be given. */
export function deliver(limited: LimitedDose, means: Means, earlier?: DrawnFrom): Delivered {
  if (limited.unit === "J") return deliverEnergy(limited, means.deviceEnergiesJ);
  if (limited.unit === "mL") return deliverFluid(limited, means);
  const { inhalers } = means;
  if (inhalers.length > 0) return givePuffs({ limited, inhalers, medicine: means.medicine.name });
  if (means.strengths.length === 0) return { amount: limited.amount, steps: [], warnings: [] };
  const { strengths, syringes, rounding } = means;
  return drawUp({ limited, strengths, syringes, rounding, earlier });
}

function deliverFluid(limited: LimitedDose, { medicine, syringes, rounding }: Means): Delivered {
  const {
    ml,
    errorPercent: percent,
    ...marks
  } = measureVolume({
    exactMl: limited.amount,
    maximumMl: limited.maximum,
    minimumMl: limited.minimum,
    syringes,
    rounding,
  });
  const { syringeMl } = marks;
  const rounded: WorkingStep = {
    step: "rounding",
    exactMl: toNumber(limited.amount),
    ml: toNumber(ml),
    ...marks,
    errorPercent: percent,
  };
  const aboveTolerance = Math.abs(percent) > ROUNDING_TOLERANCE_PERCENT;
  return {
    amount: ml,
    volume: { ml: toNumber(ml), strength: medicine.name, ...(syringeMl !== undefined && { syringeMl }) },
    steps: percent === 0 ? [] : [rounded],
    warnings:
      percent === 0
        ? []
        : [
            {
              type: "rounded",
              errorPercent: percent,
              aboveTolerance,
              ...(marks.byRule && { byRule: marks.byRule }),
            },
          ],
  };
}

/** The nearest setting of the device that does not pass the maximum; the lower one of two as near. */
function deliverEnergy(limited: LimitedDose, deviceEnergiesJ: readonly number[]): Delivered {
  const exactJ = toNumber(limited.amount);
  const { maximum } = limited;
  const settings = deviceEnergiesJ.filter(
    (joules) => maximum === undefined || compare(exactly(joules), maximum) <= 0,
  );
  const [first, ...rest] = settings;
  if (first === undefined) throw new RangeError("Cannot set an energy as deviceEnergiesJ must not be empty");
  const settingJ = rest.reduce(
    (best, joules) => (Math.abs(joules - exactJ) < Math.abs(best - exactJ) ? joules : best),
    first,
  );
  const percent = errorPercent({ exact: limited.amount, rounded: exactly(settingJ) });
  if (percent === 0) return { amount: limited.amount, steps: [], warnings: [] };
  const aboveTolerance = Math.abs(percent) > ROUNDING_TOLERANCE_PERCENT;
  return {
    amount: exactly(settingJ),
    steps: [{ step: "device-step", exactJ, settingJ, errorPercent: percent }],
    warnings: [{ type: "rounded", errorPercent: percent, aboveTolerance }],
  };
}
