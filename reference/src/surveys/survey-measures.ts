import type { Measurements } from "@steelyard/core/body";
import { centimetres, millimetres } from "@steelyard/core/units";
import type { SurveyChild } from "./read-surveys.ts";

/** Length, as a survey gives it. */
export const lengthOnly = (child: SurveyChild): Measurements => ({ lengthCm: centimetres(child.lengthCm) });

/** Length and arm, as the clinician at the bedside has them. */
export const lengthAndArm = (child: SurveyChild): Measurements => ({
  ...lengthOnly(child),
  armMm: millimetres(child.armMm),
});

/** And the sex, where the survey knows it. */
export const lengthArmSex = (child: SurveyChild): Measurements => ({
  ...lengthAndArm(child),
  ...(child.sex === undefined ? {} : { sex: child.sex }),
});
