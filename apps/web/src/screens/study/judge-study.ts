import type { Formulary } from "@steelyard/core/dosing";
import { renderSvg } from "@steelyard/paper";
import { analyseStudy, MADE_STRATA } from "@steelyard/study/analysis";
import { examineStudy } from "@steelyard/study/findings";
import { plainFormulas } from "@steelyard/study/formulas";
import {
  type ImportedStudy,
  importStudy,
  type MappingChange,
  type OpenedFile,
} from "@steelyard/study/import";
import { type Method, methodId, readMethod } from "@steelyard/study/methods";
import { assessQuality } from "@steelyard/study/quality";
import { composeReport, ENGLISH_REPORT, type ReportInput, type StudyReport } from "@steelyard/study/report";
import { type StudyTable, selectRows } from "@steelyard/study/table";
import type { ComparedAs, ShownStudy, StudyStep } from "./study-job.ts";

/** A study judged: the report, what the page shows of it, and the children compared. */
export interface JudgedStudy {
  readonly report: StudyReport;
  readonly shown: ShownStudy;
  readonly compared: StudyTable;
}

export interface JudgeOptions {
  readonly title: string;
  readonly changes: readonly MappingChange[];
  /** As typed at the command line; the usual ones where none is chosen. */
  readonly methods: readonly string[];
  readonly by: readonly string[];
  readonly compared: ComparedAs;
  /** Whose accepted ranges doses are judged by; none are where it is absent. */
  readonly formulary?: Formulary | undefined;
  readonly onStep: (step: StudyStep, share: number) => void;
  readonly facts: Pick<ReportInput, "fileSha256" | "madeOn" | "software" | "model" | "typefaces">;
}

/** Reads, judges and draws a study; a sentence where the file cannot be read as one. */
export function judgeStudy(
  file: OpenedFile,
  options: JudgeOptions,
): JudgedStudy | { readonly refused: string } {
  const { title, changes, onStep, facts } = options;
  const onProgress =
    (step: StudyStep) =>
    (share: number): undefined =>
      void onStep(step, share);
  const study = importStudy(file, { changes, onProgress: onProgress("reading") });
  if (!study.ok) return { refused: ENGLISH_REPORT.issue(study.error) };
  const { table, fates } = study.value;
  const compared = selectRows(table, (row) => fates[row] === 0);
  const known = methodsOf(study.value);
  const chosen = options.methods.flatMap((text) => known.filter(({ id }) => id === text));
  const methods = chosen.length > 0 ? chosen : known.filter(({ usual }) => usual);
  const groups = [
    ...MADE_STRATA,
    ...[...table.words]
      .filter(([, { levels }]) => levels.length > 1 && levels.length <= 60)
      .map(([name]) => name),
  ];
  const by =
    options.by.length > 0
      ? options.by
      : groups.filter((name) => ["length", "age", "sex", "site"].includes(name));
  const analysis = analyseStudy(compared, {
    methods: methods.map(({ method }) => method),
    by,
    onProgress: onProgress("estimating"),
  });
  const { reference, marginPoints, seed } = options.compared;
  const clusters = compared.words.has(options.compared.clusters) ? options.compared.clusters : undefined;
  const findings = examineStudy(analysis, {
    seed,
    clusters,
    formulary: options.formulary,
    onProgress: onProgress("comparing"),
  });
  onStep("judging", 0);
  const quality = assessQuality(table, { by: ["measurer", "site"] });
  onStep("drawing", 0);
  const invented = file.header.some((name) => name.toLowerCase() === "invented");
  const report = composeReport({
    study: study.value,
    quality,
    analysis,
    findings,
    comparison: { reference, marginPoints: marginPoints > 0 ? marginPoints : undefined },
    title,
    invented,
    ...facts,
  });
  const shown: ShownStudy = {
    title: report.title,
    mapping: study.value.mapping,
    chosenMethods: methods.map(({ id }) => id),
    methods: known.map(({ id, name }) => ({ id, name })),
    chosenGroups: by,
    groups,
    compared: options.compared,
    clusters: [...compared.words.keys()],
    blocks: report.blocks.map((block) =>
      block.type === "figure"
        ? {
            type: "figure",
            name: block.name,
            caption: block.caption,
            svg: renderSvg(block.page, { title: block.caption }),
          }
        : block,
    ),
  };
  return { report, shown, compared };
}

/** Every method this file has what it takes for; the usual ones are judged unasked. */
function methodsOf({ mapping }: ImportedStudy): readonly {
  readonly id: string;
  readonly name: string;
  readonly method: Method;
  readonly usual: boolean;
}[] {
  const has = (...fields: readonly string[]): boolean =>
    mapping.some(({ role }) => role.type === "field" && fields.includes(role.field));
  const length = has("lengthCm", "standingHeightCm", "statureCm");
  const [arm, sex, age] = [has("armMm"), has("sex"), has("ageMonths")];
  const body = [
    ...(length ? ["length"] : []),
    ...(length && arm ? ["length+arm"] : []),
    ...(length && arm && sex ? ["length+arm+sex"] : []),
    ...(length && arm && sex && age ? ["length+arm+sex+age"] : []),
    ...(length && arm && has("waistCm") ? ["length+arm+waist"] : []),
    ...(age ? ["age"] : []),
    ...(age && arm ? ["age+arm"] : []),
  ].map((inputs) => `body:${inputs}`);
  const usual = new Set(["body:length", "body:length+arm", ...(length ? [] : ["body:age"])]);
  const columns = mapping.flatMap(({ column, role }) => (role.type === "estimate" ? [column] : []));
  const formulas = age ? plainFormulas.map(({ sourceId }) => `formula:${sourceId}`) : [];
  return [...body, ...columns, ...formulas].flatMap((text) => {
    const method = readMethod(text, columns);
    if (!method.ok) return [];
    return [
      {
        id: methodId(method.value),
        name: ENGLISH_REPORT.methodName(method.value),
        method: method.value,
        usual: usual.has(text) || columns.includes(text),
      },
    ];
  });
}
