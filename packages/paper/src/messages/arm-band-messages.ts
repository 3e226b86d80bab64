/** The words of the arm band. */
export interface ArmBandMessages {
  readonly title: string;
  readonly subtitle: string;
  readonly tape: string;
  readonly zero: string;
  piece(values: { readonly piece: number; readonly pieces: number }): string;
  glue(values: { readonly piece: number }): string;
  readonly finder: string;
  readonly middle: string;
  readonly toShoulder: string;
  readonly toElbow: string;
  readonly tapeAlt: string;
  readonly finderAlt: string;
  readonly glueOther: string;
  readonly shoulderTip: string;
  readonly middleMark: string;
  readonly elbowTip: string;
  readonly armAlt: string;
  readonly makeTitle: string;
  readonly make: readonly string[];
  readonly useTitle: string;
  readonly use: readonly string[];
}
