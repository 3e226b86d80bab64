import type { SourceRef, Verification } from "../citation.ts";

/** Where one rule comes from: the document, the place in it, and whether it was seen there. */
export interface LookupSource {
  readonly sourceId: keyof typeof TITLES;
  readonly locator?: string;
  readonly verification: Verification;
}

/** Titles as the registry `docs/sources.json` has them; a test compares the two. */
const TITLES = {
  "aap-2017-blood-pressure":
    "Clinical practice guideline for screening and management of high blood pressure in children and adolescents, Pediatrics",
  "aha-2010-paediatric":
    "2010 American Heart Association Guidelines, part 14: pediatric advanced life support",
  "aha-2020-highlights": "Highlights of the 2020 American Heart Association Guidelines for CPR and ECC",
  "blood-press-1999": "Choice of blood pressure cuff in 236 pupils, Blood Press",
  "common-practice": "Common practice in the care of critically ill children",
  "crit-care-2019-hypotension":
    "Hypotension by the limits of paediatric advanced life support and by centiles, Crit Care",
  fleming2011:
    "Normal ranges of heart rate and respiratory rate in children from birth to 18 years of age: a systematic review of observational studies, Lancet",
  haque2007:
    "Analysis of the evidence for the lower limit of systolic and mean arterial pressure in children, Pediatr Crit Care Med",
  hunyady2008:
    "Front teeth-to-carina distance in children undergoing cardiac catheterization, Anesthesiology",
  khine1997:
    "Comparison of cuffed and uncuffed endotracheal tubes in young children during general anesthesia, Anesthesiology",
  morgan1982: "Linear airway dimensions in children: including those with cleft palate, Can Anaesth Soc J",
  "neonatal-resuscitation-textbook": "Textbook of Neonatal Resuscitation",
  park2022: "Choice of the correct size of endotracheal tube in pediatric patients, Anesth Pain Med",
  "rcuk-2021-paediatric": "Resuscitation Council UK Guidelines 2021: paediatric advanced life support",
  "supraglottic-weight-ranges": "Weight ranges printed on supraglottic airways",
  "tonsillectomy-tube-size":
    "Accuracy of age-based formula to predict the size and depth of cuffed oral preformed endotracheal tubes in children undergoing tonsillectomy",
  wang1997:
    "Endotracheal tube size selection guidelines for Chinese children: prospective study of 533 cases, J Formos Med Assoc",
} as const;

/** The citations with the titles of their documents, each place once. */
export function cite(sources: readonly LookupSource[]): SourceRef[] {
  const refByPlace = new Map<string, SourceRef>();
  for (const source of sources) {
    const place = `${source.sourceId} ${source.locator ?? ""} ${source.verification}`;
    refByPlace.set(place, { ...source, title: TITLES[source.sourceId] });
  }
  return [...refByPlace.values()];
}

/** What the trade simply knows. */
export const COMMON_PRACTICE: LookupSource = {
  sourceId: "common-practice",
  verification: "common practice",
};
