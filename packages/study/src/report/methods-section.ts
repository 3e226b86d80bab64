import type { StudyAnalysis } from "../analysis/index.ts";
import { plainFormulas } from "../formulas/index.ts";
import { ENGLISH_REPORT } from "./english-words.ts";
import type { ReportInput } from "./report-input.ts";

/** What was done, as a paragraph that may go into a paper. */
export function methodsParagraph({
  study,
  analysis,
  software,
  model,
}: Pick<ReportInput, "study" | "analysis" | "software" | "model">): string {
  const names = analysis.methods.map(({ estimates }) => ENGLISH_REPORT.methodName(estimates.method));
  const body = analysis.methods.some(({ estimates }) => estimates.method.type === "body")
    ? ` The body model (version ${model}) was given exactly the measurements named, as an uncalibrated site; a child that lacks one of them got no estimate from it.`
    : "";
  return (
    `Of ${ENGLISH_REPORT.count(study.flow.read)} rows, ${ENGLISH_REPORT.count(study.flow.included)} with a scale weight and a length or an age were compared; the flow diagram gives the fate of every other. ` +
    "Lying length was used as it is; a standing height was raised by 0.7 cm, and a stature of unknown stance was taken as lying under 24 months or, without an age, under 87 cm. " +
    `Methods: ${names.join("; ")}.${body} ` +
    "The percentage error is 100 (estimate − true) / true. The shares within 10, 20 and 30 % are given with Wilson's score interval, limits of agreement as bias ± 1.96 SD with t-intervals (standard error SD times the square root of 1/n + 1.96²/(2(n − 1))) for differences in %, in kg and of logarithms; concordance is Lin's coefficient. " +
    "Intervals take children as independent; where rows repeat a child or come in clusters they are too narrow. " +
    `Computed by steelyard ${software}; nothing in it is drawn at random.`
  );
}

/** References of what was used. */
export function references(analysis: StudyAnalysis): readonly string[] {
  const formulas = analysis.methods.flatMap(({ estimates: { method } }) =>
    method.type === "formula" ? plainFormulas.filter(({ sourceId }) => sourceId === method.sourceId) : [],
  );
  return [
    "Bland JM, Altman DG. Statistical methods for assessing agreement between two methods of clinical measurement. Lancet 1986.",
    "Bland JM, Altman DG. Measuring agreement in method comparison studies. Statistical Methods in Medical Research 1999.",
    "Newcombe RG. Two-sided confidence intervals for the single proportion: comparison of seven methods. Statistics in Medicine 1998.",
    "Lin LI. A concordance correlation coefficient to evaluate reproducibility. Biometrics 1989.",
    "World Health Organization. WHO Child Growth Standards 2006 and WHO Reference 2007: z-scores and flag limits.",
    ...formulas.map(({ name }) => `Formula: ${name}.`),
  ];
}

/** Items of STARD 2015 (studies of diagnostic accuracy) and GRRAS (reliability and agreement) answered here, by their number there. */
export function checklist(compared: boolean): readonly string[] {
  if (!compared) return [];
  return [
    "STARD 10a, 10b: index methods and the reference (scale weight) are named in the methods paragraph.",
    "STARD 14: estimators and intervals are named with references.",
    "STARD 16: missing and unusable values are counted, by reason, in the flow diagram and the tables of cells.",
    "STARD 19: the flow of children is drawn.",
    "STARD 24: estimates of accuracy are given with 95 % intervals.",
    "GRRAS 10, 13: the estimates of agreement are given with their intervals and the statistical analysis is described.",
    "Not answered here, and yours to write: setting, recruitment, eligibility, training of measurers, blinding of measurers to the scale, time between estimate and scale, ethics and funding.",
  ];
}
