/** An effect of one study or site with its sampling variance. */
export interface StudyEffect {
  readonly effect: number;
  readonly variance: number;
}
