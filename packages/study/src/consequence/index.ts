export {
  type DoseConsequence,
  type DoseConsequenceInput,
  type DoseLineConsequence,
  doseConsequence,
  type SizeConsequence,
} from "./dose-consequence.ts";
