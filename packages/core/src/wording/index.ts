export { type Block, cautionBlock } from "./caution-block.ts";
export { describeBodyIssue } from "./describe-body-issue.ts";
export { describeBodyWarning } from "./describe-body-warning.ts";
export { describeBurnPercentIssue } from "./describe-burn-percent-issue.ts";
export {
  describeDosingWarning,
  describeRobustnessOmitted,
  describeTrackingWarning,
  describeUnavailable,
} from "./describe-dosing-warning.ts";

export { describeEntryIssue } from "./describe-entry-issue.ts";
export { describeEntryNotice } from "./describe-entry-notice.ts";
export {
  describeEquipmentItem,
  describeEquipmentNote,
  describeEquipmentSize,
  equipmentBlock,
} from "./describe-equipment.ts";
export { describeField } from "./describe-field.ts";
export {
  describeLookupGap,
  describeLookupRests,
  describeLookupRule,
  describeLookupStep,
  describeLookupWarning,
} from "./describe-lookup.ts";
export { describeNextMeasurement } from "./describe-next-measurement.ts";
export { describeProblem } from "./describe-problem.ts";
export { describeProposal, describeProposals } from "./describe-proposals.ts";
export { describeRests } from "./describe-rests.ts";
export { describeSign, describeSignValue, signsBlock } from "./describe-signs.ts";
export {
  describeCalibrationIssue,
  describeFieldFault,
  describeSiteProfileIssue,
} from "./describe-site-profile-issue.ts";
export { describeSlip } from "./describe-slip.ts";
export { describeWorking } from "./describe-working.ts";
export type { DosingCatalogue } from "./dosing-catalogue.ts";
export { draftBanner } from "./draft-banner.ts";
export { ENGLISH } from "./english.ts";
export { ENGLISH_DOSING } from "./english-dosing.ts";
export { ENGLISH_LANGUAGE } from "./english-language.ts";
export { ENGLISH_SITE, type SiteCatalogue } from "./english-site.ts";
export { FRENCH_LANGUAGE } from "./french-language.ts";
export type { Language } from "./language.ts";
export type { MessageCatalogue, MessageKey, MessageValues } from "./message-catalogue.ts";
