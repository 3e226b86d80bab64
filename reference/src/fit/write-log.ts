import { type BodyModel, type BodyReference, boxCoxZ } from "@steelyard/core/body";
import { accuracyTable } from "../accuracy-table.ts";
import { type JudgedRow, judge } from "../judge.ts";
import type { NhanesLoad } from "../nhanes/load-nhanes.ts";
import { folds } from "./cross-validate.ts";
import { measureSets } from "./measure-sets.ts";
import type { FitChild, Selection } from "./select-children.ts";

/** 15 cm: 50-65 to 185-200. */
const bands = Array.from({ length: 10 }, (_, i) => [50 + 15 * i, 65 + 15 * i] as const);
const arms = [-2, -1, 0, 1, 2] as const;

/** The log of a fit: what was read, dropped and reached. Markdown, the same bytes for the same data. */
export function writeLog(given: {
  load: NhanesLoad;
  selection: Selection;
  reference: BodyReference;
  heldOut: (child: FitChild) => BodyModel;
}): string {
  const { load, selection, reference, heldOut } = given;
  const judged = new Map(
    measureSets.map(([name, measure]) => [
      name,
      judge({ children: selection.children, measure, modelFor: heldOut }),
    ]),
  );
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

## Shape

Curves on ${reference.basis.intervals} equal steps of ln length from 45 to 205 cm. Spread of weight given the arm: Student's t with ${residual.tailDf} degrees of
freedom, scale ${residual.scale}, following the slope of the weight curve to the power ${residual.spreadPower}.

## Accuracy, cross-validated

${accuracyTable(
  "known",
  measureSets.map(([name]) => [name, rowsOf(name)]),
)}

Refused as outside the model's range, over all rows of this table: ${refused}.

### Length + arm, sex unknown

${byBand("length + arm")}

### Length + arm + sex

${byBand("length + arm + sex")}

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
  return boxCoxZ(model.at(child.sex, child.lengthCm).curve("arm"), Math.log(child.armMm));
}
