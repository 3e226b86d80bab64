import type { DoseOption, Formulary, Medicine, Use } from "./formulary.ts";
import { type LineHead, lineHead } from "./line-head.ts";
import { lineIdOf } from "./line-id.ts";
import { lineSources } from "./line-sources.ts";
import { type InhalerStrength, isInhaler, type LiquidStrength, type Strength } from "./strength.ts";

/** One use with everything that is the same for every child. */
export interface PreparedUse {
  readonly lineId: string;
  readonly medicine: Medicine;
  readonly use: Use;
  /** Those that a syringe measures, and those that give puffs. */
  readonly strengths: readonly LiquidStrength[];
  readonly inhalers: readonly InhalerStrength[];
  readonly options: ReadonlyMap<string, PreparedOption>;
}

interface PreparedOption {
  readonly option: DoseOption;
  readonly head: LineHead;
}

/** A formulary is never changed in place, so what follows from it is worked out once. */
const preparedByFormulary = new WeakMap<Formulary, readonly PreparedUse[]>();

/** The uses of a formulary in its order. Throws a `RangeError` where it names a strength or a source it does not have. */
export function prepareUses(formulary: Formulary): readonly PreparedUse[] {
  const known = preparedByFormulary.get(formulary);
  if (known !== undefined) return known;
  const sourceById = new Map(formulary.sources.map((source) => [source.id, source]));
  const prepared = formulary.medicines.flatMap((medicine) =>
    medicine.uses.map((use): PreparedUse => {
      const options = use.options.map((option): [string, PreparedOption] => {
        const sources = lineSources({ medicine, use, option, sourceById });
        return [option.id, { option, head: lineHead({ medicine, use, option, sources }) }];
      });
      const strengths = strengthsOf(medicine, use);
      return {
        lineId: lineIdOf({ medicine: medicine.id, use: use.id }),
        medicine,
        use,
        strengths: strengths.filter((strength): strength is LiquidStrength => !isInhaler(strength)),
        inhalers: strengths.filter(isInhaler),
        options: new Map(options),
      };
    }),
  );
  preparedByFormulary.set(formulary, prepared);
  return prepared;
}

function strengthsOf(medicine: Medicine, use: Use): Strength[] {
  return use.strengths.map((id) => {
    const strength = medicine.strengths.find((candidate) => candidate.id === id);
    if (strength !== undefined) return strength;
    throw new RangeError(
      `Cannot compute ${medicine.id}.${use.id} as its strengths must exist: current id is ${id}`,
    );
  });
}
