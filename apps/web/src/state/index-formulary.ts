import type { Formulary, ProblemId } from "@steelyard/core/dosing";

/** A use by name only: enough to show what there is, and to search it, before any dose is computed. */
export interface IndexedUse {
  /** The id of its line on the sheet: `adrenaline.arrest`. */
  readonly id: string;
  readonly medicine: string;
  readonly use: string;
}

export interface IndexedProblem {
  readonly problem: ProblemId;
  readonly uses: readonly IndexedUse[];
}

/** What the first screen has to know of a formulary. */
export interface FormularyIndex {
  readonly version: string;
  /** Of its words, as a tag of BCP 47; absent where they are English. */
  readonly language?: string;
  readonly signed: boolean;
  /** In the order of the site; the problems it does not name follow in the order of the medicines. */
  readonly problems: readonly IndexedProblem[];
}

/** The names of a formulary, by problem. */
export function indexFormulary({
  version,
  language,
  signed,
  medicines,
  problemOrder,
}: Formulary): FormularyIndex {
  const usesByProblem = new Map<ProblemId, IndexedUse[]>(
    (problemOrder ?? []).map((problem) => [problem, []]),
  );
  for (const { id, name, uses } of medicines) {
    for (const { id: useId, title, problem } of uses) {
      const found = usesByProblem.get(problem) ?? [];
      found.push({ id: `${id}.${useId}`, medicine: name, use: title });
      usesByProblem.set(problem, found);
    }
  }
  const problems = [...usesByProblem].map(([problem, uses]) => ({ problem, uses }));
  return {
    version,
    ...(language === undefined ? {} : { language }),
    signed,
    problems: problems.filter(({ uses }) => uses.length > 0),
  };
}
