import type { Typefaces } from "@steelyard/paper";
import type { StudyAnalysis } from "../analysis/index.ts";
import type { StudyFindings } from "../findings/index.ts";
import type { ImportedStudy } from "../import/index.ts";
import type { StudyQuality } from "../quality/index.ts";
import type { ComparisonChoice } from "./comparison-table.ts";

/** What a report is made of. */
export interface ReportInput {
  readonly study: ImportedStudy;
  readonly quality: StudyQuality;
  readonly analysis: StudyAnalysis;
  /** What is drawn by chance or rests on a choice; left out of the report when absent. */
  readonly findings?: StudyFindings;
  readonly comparison?: ComparisonChoice;
  readonly title: string;
  /** SHA-256 of the file, hexadecimal: the same file is known again. */
  readonly fileSha256: string;
  /** YYYY-MM-DD. */
  readonly madeOn: string;
  readonly software: string;
  readonly model: string;
  /** Marks a study of invented children on every part of it. */
  readonly invented?: boolean;
  readonly typefaces: Typefaces;
}
