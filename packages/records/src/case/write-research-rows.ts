import type { CaseMeasurements } from "./case-event.ts";
import type { CaseRecord } from "./fold-case.ts";
import { numberColumns } from "./study-columns.ts";
import { writeStudyRows } from "./write-study-rows.ts";

/** With fewer children than this one of them may be known by being among them. @source cms-cell-size */
export const fewestResearchRows = 11;

/**
 * Cases as a study file without anything that says who the children are: numbers by chance in place of codes, no note, no initials, no
 * day, no hour, no device, no name of a site, and no free text at all. Ages in whole months, times as whole days from the start of the
 * case to the weighing. Read by `steelyard study`.
 *
 * `order`: a permutation by chance of the places of `records`, 0 to their number less one: the rows come in it and are numbered in it. A
 * `RangeError` otherwise. Deleted cases and cases without a measurement are left out.
 *
 * @source hipaa-safe-harbor
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { studyColumns, writeResearchRows } from "@steelyard/records/case";
 *
 * assert.equal(writeResearchRows([], { order: [] }).csv, `${studyColumns.join(",")}\r\n`);
 * ```
 */
export function writeResearchRows(
  records: readonly CaseRecord[],
  { order }: { readonly order: readonly number[] },
): { readonly csv: string; readonly rows: number } {
  if (order.length !== records.length || new Set(order).size !== records.length) {
    throw new RangeError(
      `Cannot write rows as order must be a permutation of ${records.length} places: it has ${new Set(order).size}`,
    );
  }
  const shown = order
    .map((place) => records[place])
    .filter((record) => record !== undefined)
    .filter(({ deletedAt, measurement }) => deletedAt === undefined && measurement !== undefined);
  return { csv: writeStudyRows(shown.map(withoutIdentity)), rows: shown.length };
}

/** Words that a device may have written are kept only where they are words of this format. */
const restsWords: ReadonlySet<string> = new Set([
  ...Object.keys(numberColumns),
  "sex",
  "posture",
  "build",
  "missingLimb",
  "oedema",
  "earlier",
  "scaleKg",
]);
const versionNumber = /^\d{1,6}(\.\d{1,6}){0,3}$/;

function withoutIdentity(record: CaseRecord, place: number): CaseRecord {
  const { measurement, estimate, versions } = record;
  const numbered = (text: string): string => (versionNumber.test(text) ? text : "other");
  return {
    ...record,
    code: String(place + 1),
    ...(measurement && {
      measurement: { ...measurement, measurements: withWholeMonths(measurement.measurements) },
    }),
    ...(estimate && {
      estimate: {
        ...estimate,
        estimate: {
          ...estimate.estimate,
          rests: estimate.estimate.rests.filter((word) => restsWords.has(word)),
        },
      },
    }),
    versions: {
      software: numbered(versions.software),
      model: numbered(versions.model),
      // The site names and numbers its own.
      formulary: "of the site",
      formularySigned: versions.formularySigned,
      ...(versions.calibration === undefined ? {} : { calibration: "of the site" }),
    },
  };
}

/** Decimals of a month are those of a birthday. */
function withWholeMonths({ ageMonths, ...rest }: CaseMeasurements): CaseMeasurements {
  return ageMonths === undefined ? rest : { ...rest, ageMonths: Math.floor(ageMonths) };
}
