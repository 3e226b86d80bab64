import type { Posture, Sex } from "@steelyard/core/body";

/** An invented child, as it is drawn. */
export interface PracticeChild {
  readonly lengthCm: number;
  readonly armMm: number;
  /** Where on the tape the crown lies; not always at nothing, as at the bedside. */
  readonly startCm: number;
  readonly posture: Posture;
  readonly sex: Sex;
  readonly ageMonths: number;
}

/** Twenty invented children: every posture, thin to very heavy, tapes that begin at nothing and tapes that do not. */
export const practiceChildren: readonly PracticeChild[] = [
  { lengthCm: 92.4, armMm: 153, startCm: 0, posture: "lying", sex: "f", ageMonths: 33 },
  { lengthCm: 67.8, armMm: 142, startCm: 0, posture: "lying", sex: "m", ageMonths: 7 },
  { lengthCm: 118.3, armMm: 176, startCm: 0, posture: "lying", sex: "m", ageMonths: 74 },
  { lengthCm: 54.6, armMm: 109, startCm: 0, posture: "lying", sex: "f", ageMonths: 1 },
  { lengthCm: 104.7, armMm: 162, startCm: 10, posture: "lying", sex: "f", ageMonths: 52 },
  { lengthCm: 81.2, armMm: 127, startCm: 0, posture: "half-sitting", sex: "m", ageMonths: 20 },
  { lengthCm: 133.9, armMm: 248, startCm: 0, posture: "half-sitting", sex: "f", ageMonths: 101 },
  { lengthCm: 147.6, armMm: 221, startCm: 0, posture: "lying", sex: "m", ageMonths: 139 },
  { lengthCm: 73.5, armMm: 118, startCm: 5, posture: "lying", sex: "m", ageMonths: 11 },
  { lengthCm: 112.1, armMm: 158, startCm: 0, posture: "seated", sex: "f", ageMonths: 66 },
  { lengthCm: 98.8, armMm: 149, startCm: 0, posture: "lying", sex: "m", ageMonths: 44 },
  { lengthCm: 126.4, armMm: 187, startCm: 0, posture: "half-sitting", sex: "m", ageMonths: 92 },
  { lengthCm: 60.3, armMm: 124, startCm: 0, posture: "lying", sex: "m", ageMonths: 3 },
  { lengthCm: 139.2, armMm: 289, startCm: 0, posture: "lying", sex: "f", ageMonths: 120 },
  { lengthCm: 86.7, armMm: 131, startCm: 20, posture: "lying", sex: "f", ageMonths: 25 },
  { lengthCm: 121.5, armMm: 203, startCm: 0, posture: "seated", sex: "m", ageMonths: 80 },
  { lengthCm: 108.9, armMm: 143, startCm: 0, posture: "half-sitting", sex: "f", ageMonths: 59 },
  { lengthCm: 77.1, armMm: 151, startCm: 0, posture: "seated", sex: "f", ageMonths: 14 },
  { lengthCm: 142.8, armMm: 206, startCm: 5, posture: "lying", sex: "m", ageMonths: 126 },
  { lengthCm: 49.7, armMm: 96, startCm: 0, posture: "lying", sex: "m", ageMonths: 0 },
];
