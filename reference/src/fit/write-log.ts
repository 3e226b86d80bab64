import { type BodyModel, referenceSite } from "@steelyard/core/body";
import type { Judged } from "../accuracy.ts";
import { accuracyTable } from "../accuracy-table.ts";
import { type JudgedRow, judge } from "../judge.ts";
import { folds } from "./cross-validate.ts";
import type { HeldOutFit } from "./fit-and-hold-out.ts";
import { zOf } from "./fit-body-model.ts";
import type { FitChild } from "./fit-child.ts";
import { judgeMeasureSets } from "./judge-measure-sets.ts";
import { measureSet, measureSets } from "./measure-sets.ts";
import { withFieldError } from "./with-field-error.ts";

/** 15 cm: 50-65 to 185-200. */
const bands = Array.from({ length: 10 }, (_, i) => [50 + 15 * i, 65 + 15 * i] as const);
const tenCmBands = Array.from({ length: 15 }, (_, i) => [50 + 10 * i, 60 + 10 * i] as const);
const infantBands = [
  ["50 and more", 50, 205],
  ["45 to 50", 45, 50],
  ["50 to 55", 50, 55],
  ["55 to 60", 55, 60],
  ["60 and more", 60, 205],
] as const;
const arms = [-2, -1, 0, 1, 2] as const;

/** The log of a fit: what was read, dropped and reached. Markdown, the same bytes for the same data. */
export function writeLog({ load, selection, infants, references, heldOut }: HeldOutFit): string {
  const reference = references.byLength;
  const judged = judgeMeasureSets({ selection, heldOut });
  const rowsOf = (name: string): readonly JudgedRow<FitChild>[] => judged.get(name)?.rows ?? [];
  const refused = [...judged.values()].reduce((sum, judgement) => sum + judgement.refused, 0);
  const byBand = (name: string): string =>
    accuracyTable(
      "length, cm",
      bands.map(([low, high]) => [
        `${low} to ${high}`,
        rowsOf(name).filter(({ child }) => child.lengthCm >= low && child.lengthCm < high),
      ]),
    );
  const infantRows = judge({
    children: infants,
    measure: measureSet("length + arm").measure,
    modelFor: heldOut,
    site: referenceSite,
  }).rows;
  const { residual } = reference;
  return `# Log of the fit ${reference.version}

Written by \`npm run fit\`; do not edit. Errors are (estimate - scale) / scale. Every child is judged by the model fitted without
its own fold (${folds} folds by a hash of the child's number), so no figure below is on rows the model was fitted to.

## Data

NHANES, CDC (public domain). Files read: ${load.files.join(", ")}.

${load.children.length} children under 20 years; ${load.inBoth} of them in a genuine SAS transport file and in the tidy file, ${load.differing} of
these with any value differing. Kept: ${selection.children.length}, 2 months to under 18 years with weight, length and arm.

| dropped because | children |
| --- | ---: |
${[...selection.dropped].map(([reason, n]) => `| ${reason} | ${n} |`).join("\n")}

Nobody was dropped for an unlikely value: the correlations leave room for 1 pair in 100 to be a slip.

The infants of the LIFE study joined the fit (${infants.length} visits, each counting ${infants[0]?.weight ?? 0}), and at the shortest lengths WHO's
weight-for-length curve stands in for children nobody measured an arm of. In the tables of NHANES children below they are in every
fit; in the table of the infants themselves each is judged without its own fold.

## Shape

Curves on ${reference.basis.intervals} equal steps of ln length from 45 to 205 cm. Spread of weight given the arm: Student's t with ${residual.tailDf} degrees of
freedom, scale ${residual.scale}, following the slope of the weight curve to the power ${residual.spreadPower}.

## Accuracy, cross-validated

${accuracyTable(
  "known",
  measureSets.map(({ name }) => [name, rowsOf(name)]),
)}

Refused as outside the model's range, over all rows of this table: ${refused}.

### Length + arm, sex unknown

${byBand("length + arm")}

### Length + arm + sex

${byBand("length + arm + sex")}

### Length + arm + sex, 95 % interval by 10 cm and sex

${accuracyTable(
  "length, cm, and sex",
  tenCmBands.flatMap(([low, high]) =>
    (["m", "f"] as const).map((sex): readonly [string, readonly Judged[]] => [
      `${low} to ${high}, ${sex === "m" ? "boys" : "girls"}`,
      rowsOf("length + arm + sex").filter(
        ({ child }) => child.sex === sex && child.lengthCm >= low && child.lengthCm < high,
      ),
    ]),
  ),
  30,
)}

### With field error added

Length with a further SD of 1 cm and arm with 3 mm, drawn by a seeded generator; the site knows its errors.

${accuracyTable("known", [["length + arm", withFieldError({ children: selection.children, modelFor: heldOut })]])}

### Infants of the LIFE study (low birth weight, birth to 8 months)

${accuracyTable(
  "length, cm",
  infantBands.map(([name, low, high]) => [
    name,
    infantRows.filter(({ child }) => child.lengthCm >= low && child.lengthCm < high),
  ]),
)}

### Length + arm, by the arm for the length

z of the arm among children of that length and sex.

${accuracyTable(
  "arm z",
  [Number.NEGATIVE_INFINITY, ...arms].map((low, i) => {
    const high = arms[i] ?? Number.POSITIVE_INFINITY;
    const name =
      i === 0 ? `below ${high}` : high === Number.POSITIVE_INFINITY ? `above ${low}` : `${low} to ${high}`;
    return [
      name,
      rowsOf("length + arm").filter(({ child }) => {
        const z = armZ(heldOut(child), child);
        return z >= low && z < high;
      }),
    ];
  }),
)}

### Length alone

${byBand("length")}
`;
}

function armZ(model: BodyModel, child: FitChild): number {
  return zOf({ model: model.byLength, child, quantity: "arm" });
}
