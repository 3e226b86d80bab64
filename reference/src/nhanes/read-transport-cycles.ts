import type { TransportFile } from "@steelyard/study/transport";
import type { ChildRow } from "./child-row.ts";
import { compact } from "./read-tidy-csv.ts";

/** Survey cycle by the letter that ends a CDC file name; the first cycle has no letter. */
const cycleByLetter: Readonly<Record<string, string>> = {
  "": "1999-2000",
  B: "2001-2002",
  C: "2003-2004",
  D: "2005-2006",
  E: "2007-2008",
  F: "2009-2010",
  G: "2011-2012",
  H: "2013-2014",
  I: "2015-2016",
  J: "2017-2018",
};

/** A body-measures file and the demographics file of the same cycle. */
export interface TransportCycle {
  readonly letter: string;
  readonly bodyMeasures: TransportFile;
  readonly demographics: TransportFile;
}

/**
 * Joins body measures to demographics on SEQN and keeps those under 20 years at screening.
 *
 * Variable names are the CDC's: BMXWT, BMXRECUM, BMXHT, BMXARMC, BMXWAIST, BMXCALF, BMXTHICR, BMXHEAD, RIAGENDR,
 * RIDAGEYR and the age in months at the exam, RIDAGEEX (to 2009-10) or RIDEXAGM (after).
 *
 * @source nhanes
 */
export function readTransportCycle({ letter, bodyMeasures, demographics }: TransportCycle): ChildRow[] {
  const cycle = cycleByLetter[letter];
  if (cycle === undefined) return [];
  const rowBySeqn = new Map<number, number>();
  const demographicSeqn = demographics.columns.get("SEQN") ?? [];
  for (const [row, seqn] of demographicSeqn.entries()) rowBySeqn.set(Number(seqn), row);
  const from = (file: TransportFile, name: string, row: number): number | undefined => {
    const value = file.columns.get(name)?.[row];
    return typeof value === "number" ? value : undefined;
  };
  const children: ChildRow[] = [];
  for (let row = 0; row < bodyMeasures.rows; row++) {
    const seqn = from(bodyMeasures, "SEQN", row);
    const person = seqn === undefined ? undefined : rowBySeqn.get(seqn);
    if (seqn === undefined || person === undefined) continue;
    const ageYears = from(demographics, "RIDAGEYR", person);
    const gender = from(demographics, "RIAGENDR", person);
    if (ageYears === undefined || ageYears >= 20 || (gender !== 1 && gender !== 2)) continue;
    const body = (name: string): number | undefined => from(bodyMeasures, name, row);
    const demographic = (name: string): number | undefined => from(demographics, name, person);
    children.push(
      compact({
        cycle,
        seqn,
        sex: gender === 1 ? "m" : "f",
        ageMonths: demographic("RIDAGEEX") ?? demographic("RIDEXAGM") ?? demographic("RIDAGEMN"),
        ageYears,
        weightKg: body("BMXWT"),
        recumbentLengthCm: body("BMXRECUM"),
        standingHeightCm: body("BMXHT"),
        armCm: body("BMXARMC"),
        waistCm: body("BMXWAIST"),
        calfCm: body("BMXCALF"),
        thighCm: body("BMXTHICR"),
        headCm: body("BMXHEAD"),
        weightComment: body("BMIWT"),
        lengthComment: body("BMIRECUM"),
        heightComment: body("BMIHT"),
      }),
    );
  }
  return children;
}
