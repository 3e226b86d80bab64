import type { SourceRef } from "./citation.ts";
import type { DoseOption, Medicine, Note, Use } from "./formulary.ts";
import type { Guidance, OptionRef, UnavailableLine } from "./sheet-line.ts";

/** What a line says whether it has a dose or not. */
export type LineHead = Omit<UnavailableLine, "unavailable" | "working" | "warnings">;

export function lineHead({
  medicine,
  use,
  option,
  sources,
}: {
  readonly medicine: Medicine;
  readonly use: Use;
  readonly option: DoseOption;
  readonly sources: readonly SourceRef[];
}): LineHead {
  const others = use.options.filter(({ id }) => id !== option.id);
  return {
    id: `${medicine.id}.${use.id}`,
    medicine: medicine.name,
    use: use.title,
    problem: use.problem,
    route: use.routes.join(" or "),
    option: optionRef(option),
    alternatives: others.map(optionRef),
    ...(use.defaultReason !== undefined && { optionReason: use.defaultReason }),
    guidance: guidance(use, medicine.incompatibilities),
    sources,
  };
}

function optionRef({ id, title }: DoseOption): OptionRef {
  return { id, title };
}

function guidance(use: Use, incompatibilities: readonly Note[]): Guidance {
  const texts = (notes: readonly Note[]): string[] => notes.map(({ text }) => text);
  return {
    indication: use.indication,
    administration: use.administration.text,
    ...(use.repeat && { repeat: use.repeat.text }),
    ...(use.repeat?.cumulativeMaximum && { cumulativeMaximum: use.repeat.cumulativeMaximum }),
    contraindications: texts(use.contraindications),
    cautions: texts(use.cautions),
    incompatibilities: texts(incompatibilities),
    monitoring: texts(use.monitoring),
  };
}
