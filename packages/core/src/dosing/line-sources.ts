import type { Citation, Source, SourceRef } from "./citation.ts";
import type { DoseOption, Medicine, Note, Use } from "./formulary.ts";
import type { Rule } from "./rule.ts";
import { isInhaler } from "./strength.ts";

/** Every source a line rests on, the ones of the dose first, each place once. */
export function lineSources({
  medicine,
  use,
  option,
  sourceById,
}: {
  readonly medicine: Medicine;
  readonly use: Use;
  readonly option: DoseOption;
  readonly sourceById: ReadonlyMap<string, Source>;
}): SourceRef[] {
  const citations: Citation[] = [
    ...option.citations,
    ...acceptedCitations(option.rule),
    ...(use.repeat?.citations ?? []),
    ...use.administration.citations,
    ...(use.administration.dilution?.citations ?? []),
    ...medicine.strengths
      .filter(({ id }) => use.strengths.includes(id))
      .flatMap((strength) => [
        ...strength.citations,
        ...(isInhaler(strength) ? [] : (strength.smallVolumeDilution?.citations ?? [])),
      ]),
    ...(use.preparations ?? []).flatMap((preparation) => preparation.citations),
    ...use.limits.flatMap((limit) => limit.citations),
    ...notes(use.contraindications, use.cautions, use.monitoring, medicine.incompatibilities),
  ];
  const refByPlace = new Map<string, SourceRef>();
  for (const citation of citations) {
    const place = `${citation.sourceId} ${citation.locator ?? ""} ${citation.verification}`;
    if (refByPlace.has(place)) continue;
    const source = sourceById.get(citation.sourceId);
    if (source === undefined) {
      throw new RangeError(
        `Cannot cite a source as the formulary must embed it: current id is ${citation.sourceId}`,
      );
    }
    refByPlace.set(place, { ...citation, title: source.title });
  }
  return [...refByPlace.values()];
}

function notes(...lists: readonly (readonly Note[])[]): Citation[] {
  return lists.flatMap((list) => list.flatMap(({ citations }) => citations));
}

function acceptedCitations(rule: Rule): readonly Citation[] {
  switch (rule.kind) {
    case "per-kg":
    case "fixed":
      return rule.accepted?.citations ?? [];
    case "age-bands":
    case "weight-bands":
      return rule.bands.flatMap((band) => acceptedCitations(band.rule));
    default:
      return [];
  }
}
