/** One measurement that could be taken next. */
export interface SettlingMeasurement {
  /** Name of the measurement, "waistCm". */
  readonly measurement: string;
  /** Half of the 95 % range of the weight that is expected with it, percent of the weight. */
  readonly halfWidthPercent: number;
}
