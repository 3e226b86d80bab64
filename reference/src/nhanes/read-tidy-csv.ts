import { parse } from "csv-parse/sync";
import type { ChildRow } from "./child-row.ts";

/** Reads the tidy form of the NHANES children (one row per child, columns named as in its README). */
export function readTidyCsv(text: string): ChildRow[] {
  const records: Record<string, string>[] = parse(text, { columns: true, skip_empty_lines: true });
  return records.map((record) => {
    const value = (name: string): number | undefined => {
      const cell = record[name];
      return cell === undefined || cell === "" ? undefined : Number(cell);
    };
    return compact({
      cycle: record.cycle ?? "",
      seqn: value("seqn") as number,
      sex: record.sex === "M" ? "m" : "f",
      ageMonths: value("age_months"),
      ageYears: value("age_years") as number,
      weightKg: value("weight_kg"),
      recumbentLengthCm: value("recumbent_length_cm"),
      standingHeightCm: value("standing_height_cm"),
      armCm: value("mac_cm"),
      waistCm: value("waist_cm"),
      calfCm: value("calf_cm"),
      thighCm: value("thigh_cm"),
      headCm: value("head_cm"),
      weightComment: value("wt_comment"),
      lengthComment: value("len_comment"),
      heightComment: value("ht_comment"),
    });
  });
}

type Loose<T> = { readonly [K in keyof T]: T[K] | undefined };

/** Drops the keys whose value is undefined, so that "not measured" is one thing: an absent key. */
export function compact(row: Loose<ChildRow>): ChildRow {
  return Object.fromEntries(
    Object.entries(row).filter(([, value]) => value !== undefined),
  ) as unknown as ChildRow;
}
