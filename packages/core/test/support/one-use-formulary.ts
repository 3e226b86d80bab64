import type {
  Citation,
  Formulary,
  LiquidStrength,
  Medicine,
  Rule,
  Strength,
  Use,
} from "@steelyard/core/dosing";

const citations: readonly Citation[] = [{ sourceId: "common-practice", verification: "common practice" }];

/** A strength of `amountPerMl`, which may be diluted unless told otherwise. */
export function strengthOf(
  amountPerMl: number,
  unit: LiquidStrength["unit"],
  extra: Partial<LiquidStrength> = { smallVolumeDilution: { diluent: "water", citations } },
): LiquidStrength {
  return {
    id: `s-${String(amountPerMl).replace(".", "-")}`,
    amountPerMl,
    unit,
    container: "ampoule",
    containerMl: 10,
    citations,
    ...extra,
  };
}

/** An invented formulary with one medicine and one use, `test.use`. */
export function oneUseFormulary({
  rule,
  strengths = [],
  use = {},
  medicine = {},
  deviceEnergiesJ = [],
}: {
  readonly rule: Rule;
  readonly strengths?: readonly Strength[];
  readonly use?: Partial<Use>;
  readonly medicine?: Partial<Medicine>;
  readonly deviceEnergiesJ?: readonly number[];
}): Formulary {
  return {
    id: "test",
    version: "1",
    title: "Test",
    signed: false,
    deviceEnergiesJ,
    sources: [{ id: "common-practice", title: "Common practice", verification: "common practice" }],
    medicines: [
      {
        id: "test",
        name: "test",
        kind: "medicine",
        strengths,
        incompatibilities: [],
        uses: [
          {
            id: "use",
            title: "use",
            problem: "arrest",
            indication: "test",
            routes: ["IV"],
            options: [{ id: "only", title: "only", rule, citations }],
            defaultOption: "only",
            strengths: strengths.map(({ id }) => id),
            administration: { text: "push", citations },
            limits: [],
            contraindications: [],
            cautions: [],
            monitoring: [],
            neonates: "covered",
            ...use,
          },
        ],
        ...medicine,
      },
    ],
  };
}
