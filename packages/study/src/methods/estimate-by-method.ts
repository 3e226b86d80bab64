import { type EstimateOptions, estimateWeight } from "@steelyard/core/body";
import { plainFormulas } from "../formulas/index.ts";
import type { StudyTable } from "../table/study-table.ts";
import { childAt } from "./child-at.ts";
import type { BodyInput, Method, MethodEstimates } from "./method.ts";
import { methodId } from "./read-method.ts";

export interface EstimateByMethodOptions extends EstimateOptions {
  /** Told every few thousand rows, 0 to 1; false stops the work. */
  readonly onProgress?: (share: number) => boolean | undefined;
}

const EVERY = 4096;

/**
 * What a method makes of every child of a table, in kg; NaN inside the columns where it gives none.
 *
 * The body model is given exactly the inputs chosen, and a child that lacks one of them gets no estimate: a method is compared on
 * what it claims to use. Throws a `RangeError` when the table has no such column and no such formula exists.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { importStudy, openStudyFile } from "@steelyard/study/import";
 * import { estimateByMethod } from "@steelyard/study/methods";
 *
 * const file = await openStudyFile(new TextEncoder().encode("length_cm,arm_mm,weight_kg\n136,190,28\n136,,30\n"));
 * const study = file.ok ? importStudy(file.value) : file;
 * assert.ok(study.ok);
 * const estimates = estimateByMethod(study.value.table, { type: "body", inputs: ["lengthCm", "armMm"] });
 * assert.ok(estimates.served === 1 && Math.round(estimates.estimateKg[0] ?? 0) === 28);
 * ```
 */
export function estimateByMethod(
  table: StudyTable,
  method: Method,
  options: EstimateByMethodOptions = {},
): MethodEstimates {
  switch (method.type) {
    case "column":
      return ofColumn(table, method);
    case "formula":
      return ofFormula(table, method);
    case "body":
      return ofBody(table, method, options);
  }
}

function ofColumn(table: StudyTable, method: Extract<Method, { type: "column" }>): MethodEstimates {
  const estimateKg = table.numbers.get(method.column);
  if (estimateKg === undefined)
    throw new RangeError(
      `Cannot estimate by column as it must be one of the table's: current value is ${method.column}`,
    );
  return { id: methodId(method), method, estimateKg, served: countKnown(estimateKg) };
}

function ofFormula(table: StudyTable, method: Extract<Method, { type: "formula" }>): MethodEstimates {
  const formula = plainFormulas.find(({ sourceId }) => sourceId === method.sourceId);
  if (formula === undefined)
    throw new RangeError(
      `Cannot estimate by formula as it must be a known one: current value is ${method.sourceId}`,
    );
  const child = childAt(table, ["lengthCm", "armMm", "ageMonths"]);
  const estimateKg = Float64Array.from(
    { length: table.rows },
    (_, row) => formula.estimateKg(child(row)) ?? Number.NaN,
  );
  return { id: methodId(method), method, estimateKg, served: countKnown(estimateKg) };
}

function ofBody(
  table: StudyTable,
  method: Extract<Method, { type: "body" }>,
  { onProgress, ...options }: EstimateByMethodOptions,
): MethodEstimates {
  const child = childAt(table, method.inputs);
  const [estimateKg, low95Kg, high95Kg] = [0, 1, 2].map(() =>
    new Float64Array(table.rows).fill(Number.NaN),
  ) as [Float64Array, Float64Array, Float64Array];
  let served = 0;
  for (let row = 0; row < table.rows; row++) {
    if (row % EVERY === 0 && onProgress?.(row / table.rows) === false) break;
    const measurements = child(row);
    if (!method.inputs.every((input: BodyInput) => measurements[input] !== undefined)) continue;
    const estimate = estimateWeight(measurements, options);
    if (!estimate.ok) continue;
    served++;
    estimateKg[row] = estimate.value.totalKg;
    low95Kg[row] = estimate.value.low95Kg;
    high95Kg[row] = estimate.value.high95Kg;
  }
  return { id: methodId(method), method, estimateKg, low95Kg, high95Kg, served };
}

function countKnown(values: Float64Array): number {
  let known = 0;
  for (const value of values) if (!Number.isNaN(value)) known++;
  return known;
}
