import type { Build, Posture } from "./measurements.ts";

/** How exactly a site measures. Every default has its source; a site may replace any by its own (see `docs/model.md`). */
export interface MeasurementErrors {
  /** SD of one reading of the length, cm, by posture and by the people at hand. */
  readonly lengthSdCm: Readonly<Record<Posture, { readonly onePerson: number; readonly twoPeople: number }>>;
  /** Technical error of one reading of the arm, mm. */
  readonly armSdMm: number;
  /** SD of ln(weight stated by the carer / weight). */
  readonly carerLogSd: number;
  /** A build by eye as an observation of the weight's z for the length: value and variance. */
  readonly build: Readonly<Record<Build, { readonly z: number; readonly zVariance: number }>>;
}

/**
 * The technique of the children the model was fitted to. Its error is part of the fitted correlations already, so only what goes beyond it is
 * added, and what several readings take away is taken off.
 *
 * Length: two people and a board, the middle of the usual technical errors of 0.3 to 0.6 cm. Arm: NHANES publishes none, so it is taken to be
 * that of two standardisation tests, 3.15 mm within an observer, robust against slips (computed by `npm run repeats -w reference`).
 *
 * @source who-mgrs-reliability-2006
 * @source measurement-repeats
 */
export const referenceTechnique = { lengthSdCm: 0.45, armSdMm: 3.15 } as const;

/**
 * Errors to reckon with where a site has not measured its own.
 *
 * - Lying, one person with a tape: SD 1.5 cm against a board (@source babies-length-2005). Two people: the technique of the fit.
 * - Half-sitting and seated: no published figure; 2 and 2.5 cm with two people, half a centimetre more alone (common practice).
 * - Arm: the technique of the fit. Surveys whose arms are clean show no more error than that; a tape read to 5 mm adds its step.
 * - Carer: 69.8 % of stated weights within 10 % (@source wells2017), which is a SD of 9.7 %.
 * - Build by eye: judgement and body mass index disagreed in 36.7 % of children (@source build-by-eye-2025). With classes at the 15th and
 *   85th centile that is an error of 1.05 SD; the five words cut at the 3rd, 15th, 85th and 97th centile.
 */
export const defaultMeasurementErrors: MeasurementErrors = {
  lengthSdCm: {
    lying: { onePerson: 1.5, twoPeople: referenceTechnique.lengthSdCm },
    "half-sitting": { onePerson: 2.5, twoPeople: 2 },
    seated: { onePerson: 3, twoPeople: 2.5 },
  },
  armSdMm: referenceTechnique.armSdMm,
  carerLogSd: 0.097,
  build: {
    "very-thin": { z: -3.08, zVariance: 1.51 },
    thin: { z: -1.46, zVariance: 1.15 },
    average: { z: 0, zVariance: 1.49 },
    heavy: { z: 1.46, zVariance: 1.15 },
    "very-heavy": { z: 3.08, zVariance: 1.51 },
  },
};

/** The errors of the fit itself: nothing is added to any measurement. For judging the model on its own kind of data. */
export const referenceMeasurementErrors: MeasurementErrors = {
  ...defaultMeasurementErrors,
  lengthSdCm: {
    lying: { onePerson: referenceTechnique.lengthSdCm, twoPeople: referenceTechnique.lengthSdCm },
    "half-sitting": { onePerson: referenceTechnique.lengthSdCm, twoPeople: referenceTechnique.lengthSdCm },
    seated: { onePerson: referenceTechnique.lengthSdCm, twoPeople: referenceTechnique.lengthSdCm },
  },
  armSdMm: referenceTechnique.armSdMm,
};
