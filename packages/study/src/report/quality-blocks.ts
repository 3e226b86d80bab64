import { formatNumber } from "@steelyard/core/units";
import type { ImportedStudy } from "../import/index.ts";
import type { GroupQuality, StudyQuality } from "../quality/index.ts";
import type { Block } from "./block.ts";
import { tenth } from "./english-words.ts";

const n = formatNumber;

/** How each column was taken, what was found in cells, and the quality of the data overall and by measurer and site. */
export function importBlocks({ mapping, cellProblems, facts }: ImportedStudy): Block[] {
  const sheet =
    facts.sheet === undefined ? "" : `, ${facts.type === "workbook" ? "sheet" : "data set"} "${facts.sheet}"`;
  const encoding =
    facts.encoding === undefined
      ? ""
      : ` in ${facts.encoding}, cells parted by ${facts.delimiter === "\t" ? "tabs" : `"${facts.delimiter}"`}, decimal mark "${facts.decimalMark}"`;
  const formulas =
    facts.formulaCells !== undefined && facts.formulaCells.count > 0
      ? [
          `Cells that hold a formula, whose last computed value was read: ${n(facts.formulaCells.count)} (${facts.formulaCells.first.join(", ")}).`,
        ]
      : [];
  const renamed = facts.renamed.map(
    ({ column, to }) =>
      `Column "${column}" is called "${to}" here, as its name is blank or stands in the header before.`,
  );
  return [
    {
      type: "text",
      text: `A ${facts.type === "text" ? "text file" : facts.type === "workbook" ? "workbook" : "SAS transport file"}${encoding}${sheet}, ${n(facts.bytes)} bytes.`,
    },
    ...(formulas.length + renamed.length > 0
      ? [{ type: "list", items: [...formulas, ...renamed] } as const]
      : []),
    {
      type: "table",
      table: {
        name: "columns",
        caption: "What each column was taken for",
        head: ["Column", "Taken for", "Unit", "By", "In doubt"],
        rows: mapping.map(({ column, role, unit, by, unitBy, doubt }) => [
          column,
          role.type === "field"
            ? role.field
            : { estimate: "estimates of a method", group: "groups", left: "left out" }[role.type],
          unit ?? "",
          unit === undefined || unitBy === by ? by : `${by}; unit by ${unitBy}`,
          doubt === undefined ? "" : doubtText(doubt),
        ]),
        data: {
          columns: ["column", "role", "unit", "by", "unit_by"],
          rows: mapping.map(({ column, role, unit, by, unitBy }) => [
            column,
            role.type === "field" ? role.field : role.type,
            unit ?? "",
            by,
            unitBy,
          ]),
        },
      },
    },
    ...(cellProblems.length === 0
      ? []
      : [
          {
            type: "table",
            table: {
              name: "cells",
              caption: "Cells that were not taken as they are",
              head: ["Column", "What", "Cells", "For example"],
              rows: cellProblems.map(({ column, type, cells, first }) => [
                column,
                PROBLEMS[type],
                n(cells),
                first
                  .slice(0, 3)
                  .map(({ row, text }) => `row ${n(row)}: ${text}`)
                  .join("; "),
              ]),
              data: {
                columns: ["column", "problem", "cells"],
                rows: cellProblems.map(({ column, type, cells }) => [column, type, cells]),
              },
            },
          } as const,
        ]),
  ];
}

const PROBLEMS = {
  unreadable: "not a number; unknown",
  "out-of-limits": "outside what any child can have; unknown",
  "unit-in-cell": "number with its own unit or spaces; read",
  converted: "in the second unit of the column; converted",
  "word-unknown": "not a known word; unknown",
  "short-row": "row with fewer cells than the header; the rest unknown",
} as const;

function doubtText(doubt: NonNullable<ImportedStudy["mapping"][number]["doubt"]>): string {
  switch (doubt.type) {
    case "field-taken":
      return `column "${doubt.by}" is taken for it`;
    case "unit-unclear":
      return `may be ${doubt.units.join(" or ")}`;
    case "mixed-units":
      return `${tenth(100 * doubt.share)} % look like ${doubt.other}`;
    case "too-many-values":
      return `${n(doubt.values)} different texts`;
  }
}

export function qualityBlocks(quality: StudyQuality): Block[] {
  const { duplicates, slipSearch } = quality;
  const groups: readonly ({ readonly name: string } & GroupQuality)[] = [
    { ...quality, name: "All rows" },
    ...quality.by.flatMap(({ column, groups }) =>
      groups.map((own) => ({ ...own, name: `${column}: ${own.name}` })),
    ),
  ];
  const flagged = ({ flags }: GroupQuality): number => flags.reduce((sum, own) => sum + own.flagged, 0);
  const z = ({ flags }: GroupQuality): string => {
    const own = flags.find(({ indicator }) => indicator === "weight-for-length");
    return own?.sd === undefined
      ? ""
      : `${tenth(own.mean ?? 0)}, SD ${formatNumber(Math.round(100 * own.sd) / 100)}`;
  };
  const missing = (own: GroupQuality, column: string): string =>
    n(own.missing.find((one) => one.column === column)?.rows ?? 0);
  const digits = (own: GroupQuality, column: string): string => {
    const found = own.digits.find((one) => one.column === column);
    return found === undefined
      ? ""
      : `${tenth(found.preference.score)}${found.preference.p < 0.001 ? " *" : ""}`;
  };
  return [
    {
      type: "table",
      table: {
        name: "quality",
        caption:
          "Data quality: missing values, WHO flags, z-scores and preference for last digits (0 none, 100 one digit only; * cannot be chance, p < 0.001)",
        head: [
          "",
          "Rows",
          "No weight",
          "No length",
          "No arm",
          "WHO flags",
          "Weight-for-length z",
          "Digits of weight",
          "of length",
          "of arm",
          "Do not belong together",
        ],
        rows: groups.map((own) => [
          own.name,
          n(own.rows),
          missing(own, "weightKg"),
          missing(own, "lengthCm"),
          missing(own, "armMm"),
          n(flagged(own)),
          z(own),
          digits(own, "weightKg"),
          digits(own, "lengthCm"),
          digits(own, "armMm"),
          n(own.slips),
        ]),
        data: {
          columns: [
            "group",
            "rows",
            "flags",
            "slips",
            "digit_score_weight",
            "digit_score_length",
            "digit_score_arm",
          ],
          rows: groups.map((own) => [
            own.name,
            own.rows,
            flagged(own),
            own.slips,
            ...["weightKg", "lengthCm", "armMm"].map(
              (column) => own.digits.find((one) => one.column === column)?.preference.score ?? "",
            ),
          ]),
        },
      },
    },
    {
      type: "text",
      text:
        duplicates.rows === 0
          ? "No row repeats another's weight, length, arm, age and sex."
          : `Rows that repeat another's weight, length, arm, age and sex: ${n(duplicates.rows)} (rows ${duplicates.first
              .map((set) =>
                set
                  .slice(0, 3)
                  .map((row) => n(row))
                  .join(" = "),
              )
              .join("; ")}).`,
    },
    {
      type: "text",
      text: `${slipSearch.every > 1 ? `Every ${n(slipSearch.every)}th row was` : "All rows were"} judged by the body model (${n(slipSearch.looked)}): the numbers of ${n(slipSearch.slips.length)} do not belong to one child. Nothing was changed or left out for it; look at them in the notes they came from.`,
    },
    ...(slipSearch.slips.length === 0
      ? []
      : [
          {
            type: "table",
            table: {
              name: "slips",
              caption: `Rows whose numbers do not belong together${slipSearch.slips.length > 15 ? ", the first 15" : ""}`,
              head: ["Row", "Perhaps", "Given", "Meant"],
              rows: slipSearch.slips
                .slice(0, 15)
                .map(({ row, type, from, changes }) => [
                  n(row),
                  from === undefined ? type.replaceAll("-", " ") : `in ${from}`,
                  changes.map(({ measurement, given }) => `${measurement} ${n(given)}`).join(", "),
                  changes.map(({ value }) => (value === undefined ? "?" : n(value))).join(", "),
                ]),
              data: {
                columns: ["row", "type", "measurement", "given", "proposed", "p"],
                rows: slipSearch.slips.flatMap(({ row, type, changes, p }) =>
                  changes.map(({ measurement, given, value }) => [
                    row,
                    type,
                    measurement,
                    given,
                    value ?? "",
                    p,
                  ]),
                ),
              },
            },
          } as const,
        ]),
  ];
}
