export { allowableBloodLoss } from "./allowable-blood-loss.ts";
export { computeSigns } from "./compute-signs.ts";
export type {
  Centile,
  Sign,
  SignGapLine,
  SignKind,
  SignLine,
  SignValue,
  SignValueLine,
} from "./sign-line.ts";
