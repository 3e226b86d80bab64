import type { StudyFindings } from "../findings/index.ts";
import { plainFormulas } from "../formulas/index.ts";
import { ENGLISH_REPORT } from "./english-words.ts";
import type { ReportInput } from "./report-input.ts";

/** What was done, as a paragraph that may go into a paper. */
export function methodsParagraph({
  study,
  analysis,
  findings,
  comparison,
  software,
  model,
}: ReportInput): string {
  const names = analysis.methods.map(({ estimates }) => ENGLISH_REPORT.methodName(estimates.method));
  const body = analysis.methods.some(({ estimates }) => estimates.method.type === "body")
    ? ` The body model (version ${model}) was given exactly the measurements named, as an uncalibrated site; a child that lacks one of them got no estimate from it.`
    : "";
  return (
    `Of ${ENGLISH_REPORT.count(study.flow.read)} rows, ${ENGLISH_REPORT.count(study.flow.included)} with a scale weight and a length or an age were compared; the flow diagram gives the fate of every other. ` +
    "Lying length was used as it is; a standing height was raised by 0.7 cm, and a stature of unknown stance was taken as lying under 24 months or, without an age, under 87 cm. " +
    `Methods: ${names.join("; ")}.${body} ` +
    "The percentage error is 100 (estimate − true) / true. The shares within 10, 20 and 30 % are given with Wilson's score interval, limits of agreement as bias ± 1.96 SD with t-intervals (standard error SD times the square root of 1/n + 1.96²/(2(n − 1))) for differences in %, in kg and of logarithms; concordance is Lin's coefficient. " +
    "These intervals take children as independent; where rows repeat a child or come in clusters they are too narrow. " +
    (analysis.methods.length > 1
      ? `Methods were compared on the children that all of them serve: Newcombe's interval of a paired difference (method 10), McNemar's mid-p, a paired t-test of squared errors, each family of p values adjusted by ${comparison?.adjust === "benjamini-hochberg" ? "Benjamini and Hochberg" : "Holm"}. `
      : "") +
    (findings === undefined ? "" : drawnText(findings)) +
    `Computed by steelyard ${software}${findings === undefined ? "; nothing in it is drawn at random" : `; seed ${findings.seed}: the same file, options and seed give the same report`}.`
  );
}

function drawnText({ bootstrap, regression, consequences }: StudyFindings): string {
  const { column, replicates } = bootstrap;
  return (
    `The cluster bootstrap draws ${column === undefined ? "rows" : `whole clusters (${column})`} with replacement, ${ENGLISH_REPORT.count(replicates)} times, and gives bias-corrected and accelerated intervals. ` +
    (regression.length === 0
      ? ""
      : "Regression-based limits are the fitted bias ± 1.96 times the square root of pi / 2 times the fitted size of residuals. ") +
    (consequences.length === 0
      ? ""
      : `Doses were judged under formulary ${consequences[0]?.consequence.formularyVersion ?? ""}. `) +
    "The gain of a calibration is cross-validated; its learning curve judges the children not drawn. "
  );
}

/** References of what was used. */
export function references({
  analysis,
  findings,
}: Pick<ReportInput, "analysis" | "findings">): readonly string[] {
  const formulas = analysis.methods.flatMap(({ estimates: { method } }) =>
    method.type === "formula" ? plainFormulas.filter(({ sourceId }) => sourceId === method.sourceId) : [],
  );
  return [
    "Bland JM, Altman DG. Statistical methods for assessing agreement between two methods of clinical measurement. Lancet 1986.",
    "Bland JM, Altman DG. Measuring agreement in method comparison studies. Statistical Methods in Medical Research 1999.",
    "Newcombe RG. Two-sided confidence intervals for the single proportion: comparison of seven methods. Statistics in Medicine 1998.",
    "Lin LI. A concordance correlation coefficient to evaluate reproducibility. Biometrics 1989.",
    "World Health Organization. WHO Child Growth Standards 2006 and WHO Reference 2007: z-scores and flag limits.",
    ...(analysis.methods.length > 1
      ? [
          "Newcombe RG. Improved confidence intervals for the difference between binomial proportions based on paired data. Statistics in Medicine 1998.",
          "McNemar Q. Note on the sampling error of the difference between correlated proportions or percentages. Psychometrika 1947.",
          "Holm S. A simple sequentially rejective multiple test procedure. Scandinavian Journal of Statistics 1979.",
        ]
      : []),
    ...(findings === undefined
      ? []
      : [
          "Efron B, Tibshirani RJ. An Introduction to the Bootstrap. Chapman and Hall 1993.",
          "Blackman D, Vigna S. Scrambled linear pseudorandom number generators. ACM Transactions on Mathematical Software 2021.",
        ]),
    ...formulas.map(({ name }) => `Formula: ${name}.`),
  ];
}

/** Items of STARD 2015 (studies of diagnostic accuracy) and GRRAS (reliability and agreement) answered here, by their number there. */
export function checklist({
  study,
  analysis,
  findings,
}: Pick<ReportInput, "study" | "analysis" | "findings">): readonly string[] {
  if (analysis.methods.length === 0) return [];
  const strata = analysis.methods.some(({ by }) => by.length > 0);
  return [
    "STARD 10a, 10b: index methods and the reference (scale weight) are named in the methods paragraph.",
    "STARD 14: estimators and intervals are named with references.",
    "STARD 16: missing and unusable values are counted, by reason, in the flow diagram and the tables of cells.",
    ...(strata ? ["STARD 17: variability of accuracy is given by groups of children."] : []),
    "STARD 19: the flow of children is drawn.",
    ...(study.table.words.has("sex") || study.table.numbers.has("ageMonths")
      ? [
          "STARD 20, in part: age and sex of the children compared are in the tables by groups, where these were asked for.",
        ]
      : []),
    "STARD 23: the distribution of estimates against the scale is drawn (error against size, calibration).",
    "STARD 24: estimates of accuracy are given with 95 % intervals.",
    "GRRAS 10, 13: the estimates of agreement are given with their intervals and the statistical analysis is described.",
    ...(findings !== undefined && findings.consequences.length > 0
      ? ["GRRAS 14, in part: what the errors would have meant for doses and sizes is counted."]
      : []),
    `Not answered here, and yours to write: ${findings === undefined ? "" : "sample size (STARD 18; the command steelyard study sample-size computes it), "}setting, recruitment, eligibility, training of measurers, blinding of measurers to the scale, time between estimate and scale, ethics and funding.`,
  ];
}
