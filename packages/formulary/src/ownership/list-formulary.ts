import {
  type ApplicabilityLimit,
  type Citation,
  type CumulativeMaximum,
  type Formulary,
  type InhalerStrength,
  isInhaler,
  type Medicine,
  type Note,
  type Preparation,
  type SignOff,
  type Strength,
  type Use,
} from "@steelyard/core/dosing";
import { formatNumber } from "@steelyard/core/units";
import { describeRule, edges } from "./describe-rule.ts";
import { plainDose } from "./readable-value.ts";

/**
 * A formulary as a document to read and to sign, in Markdown: medicines by name, every use with each published dose, what
 * it is drawn from, limits, cautions, and the source of each with its mark.
 *
 * The same formulary gives the same text, to the byte. `medicineIds` keeps only those.
 *
 * ```ts
 * import { draftFormulary } from "@steelyard/formulary";
 * import { listFormulary } from "@steelyard/formulary/ownership";
 * import assert from "node:assert/strict";
 * assert.match(listFormulary(draftFormulary, { medicineIds: ["adrenaline"] }), /10 micrograms\/kg of ideal weight, at most 1 mg/);
 * ```
 */
export function listFormulary(
  formulary: Formulary,
  { medicineIds }: { readonly medicineIds?: readonly string[] } = {},
): string {
  const medicines = [...formulary.medicines]
    .filter(({ id }) => medicineIds === undefined || medicineIds.includes(id))
    .sort((a, b) => (a.id < b.id ? -1 : 1));
  const uses = medicines.reduce((sum, medicine) => sum + medicine.uses.length, 0);
  return `${[
    `# ${formulary.title}, version ${formulary.version}`,
    state(formulary),
    `${counted(medicines.length, "medicine")}, ${counted(uses, "use")}. Marks: *read* seen in the document, *memory* known from the trade and to be looked up there, *common practice* written in no single document.`,
    ...siteParts(formulary),
    ...disagreements(medicines),
    ...medicines.map(medicineText),
    `## Sources\n\n${formulary.sources
      .map(({ id, title, authors, year, doi, url, verification }) => {
        const parts = [authors, title, year, doi && `doi ${doi}`, url].filter((part) => part !== undefined);
        return `* \`${id}\`: ${parts.join(". ")} (*${verification}*)`;
      })
      .join("\n")}`,
  ].join("\n\n")}\n`;
}

function state({ signed, signOff }: Formulary): string {
  return signed && signOff
    ? `Signed by ${signers(signOff)}. Fingerprint ${signOff.fingerprint}.`
    : "**Unsigned draft. No licensed pharmacist or physician has reviewed it: do not use it on a patient.** Local guidelines and a licensed professional's judgement come first.";
}

function signers({ second, ...first }: SignOff): string {
  return [first, ...(second ? [second] : [])]
    .map(({ name, role, date }) => `${name}, ${role}, on ${date}`)
    .join("; and by ");
}

function siteParts({ language, deviceEnergiesJ, problemOrder, overlays = [] }: Formulary): string[] {
  return [
    ...(language === undefined ? [] : [`Language of its words: ${language}.`]),
    `Device energies: ${deviceEnergiesJ.map((energyJ) => formatNumber(energyJ)).join(", ")} J.`,
    ...(problemOrder ? [`Order of problems: ${problemOrder.join(", ")}.`] : []),
    ...overlays.map(
      ({ id, version, title, baseVersion, changes }) =>
        `Changed by ${title} (\`${id}\` ${version}, made for ${baseVersion}):\n\n${changes
          .map(({ change, at, reason }) => `* ${change} \`${at}\`: ${reason}`)
          .join("\n")}`,
    ),
  ];
}

/** Uses with more than one published dose: the default, the others, and why. */
function disagreements(medicines: readonly Medicine[]): string[] {
  const lines = medicines.flatMap(({ name, uses }) =>
    uses.flatMap(({ title, options, defaultOption, defaultReason }) => {
      if (options.length < 2) return [];
      const chosen = options.find(({ id }) => id === defaultOption)?.title ?? defaultOption;
      const others = options.filter(({ id }) => id !== defaultOption).map((option) => option.title);
      const why = defaultReason === undefined ? "" : ` Why: ${defaultReason}`;
      return [`${name}, ${title}: **${chosen}** by default; also ${others.join("; ")}.${why}`];
    }),
  );
  return lines.length === 0 ? [] : [`## Where sources disagree\n\n${bullets(lines)}`];
}

function medicineText({ id, name, highAlert, strengths, incompatibilities, uses }: Medicine): string {
  return [
    `## ${name}`,
    bullets([
      `Id \`${id}\``,
      ...(highAlert ? [`High-alert medicine, needs a second signature: ${noteText(highAlert)}`] : []),
      ...strengths.map(strengthText),
      ...incompatibilities.map((note) => `Incompatible: ${noteText(note)}`),
    ]),
    ...uses.map(useText),
  ].join("\n\n");
}

function strengthText(strength: Strength): string {
  if (isInhaler(strength)) return inhalerText(strength);
  const {
    id,
    amountPerMl,
    unit,
    container,
    expressedAs,
    equivalents = [],
    smallVolumeDilution,
    citations,
  } = strength;
  const of = expressedAs === undefined ? "" : ` of ${expressedAs}`;
  const same = equivalents.map(
    (other) =>
      `, which is ${plainDose({ amount: other.amountPerMl, unit: other.unit, per: "mL" })} of ${other.expressedAs}`,
  );
  const below = smallVolumeDilution?.belowMl;
  const dilution =
    smallVolumeDilution === undefined
      ? "; never diluted to measure a small volume"
      : `; small volumes${below === undefined ? "" : ` (under ${formatNumber(below)} mL)`} diluted with ${smallVolumeDilution.diluent}`;
  return `Strength \`${id}\`: ${plainDose({ amount: amountPerMl, unit, per: "mL" })}${of}${same.join("")}, ${container}${dilution} ${cited(citations)}`;
}

function inhalerText({
  id,
  amountPerPuff,
  unit,
  container,
  containerPuffs,
  citations,
}: InhalerStrength): string {
  return `Strength \`${id}\`: ${plainDose({ amount: amountPerPuff, unit, per: "puff" })}, ${container}, ${plainDose({ amount: containerPuffs, unit: "puff" })} ${cited(citations)}`;
}

function useText(use: Use): string {
  const {
    title,
    id,
    routes,
    problem,
    options,
    defaultOption,
    defaultReason,
    rounding,
    repeat,
    administration,
  } = use;
  const optionTexts = options.map((option) => {
    const mark = options.length > 1 && option.id === defaultOption ? " **(default)**" : "";
    const later = (option.further ?? []).flatMap((rule, index) =>
      describeRule(rule).map((text) => `dose ${index + 2}: ${text}`),
    );
    const lines = [...describeRule(option.rule), ...later].map((line) => `  * ${line}`).join("\n");
    return `Dose \`${option.id}\`${mark}: ${option.title} ${cited(option.citations)}\n${lines}`;
  });
  return [
    `### ${title}, ${routes.join(" or ")}`,
    bullets([
      `Id \`${id}\`, listed under ${problem}. ${use.indication}`,
      ...optionTexts,
      ...(defaultReason === undefined ? [] : [`Why the default: ${defaultReason}`]),
      ...(use.strengths.length === 0
        ? []
        : [`Drawn from, in this order: ${use.strengths.map((s) => `\`${s}\``).join(", ")}`]),
      ...(use.preparations ?? []).map(preparationText),
      ...(rounding
        ? [
            `Volume rounded ${rounding.direction} to ${formatNumber(rounding.toMl)} mL ${cited(rounding.citations)}`,
          ]
        : []),
      ...(repeat ? [repeatText(repeat)] : []),
      administrationText(administration),
      ...use.limits.map(limitText),
      ...use.contraindications.map((note) => `Contraindicated: ${noteText(note)}`),
      ...use.cautions.map((note) => `Caution: ${noteText(note)}`),
      ...use.monitoring.map((note) => `Watch: ${noteText(note)}`),
      use.neonates === "covered"
        ? "Covers the first 28 days of life"
        : "Not written for the first 28 days of life",
    ]),
  ].join("\n\n");
}

function preparationText(preparation: Preparation): string {
  const { id, unit, totalMl, diluent, citations } = preparation;
  const amount =
    preparation.kind === "fixed"
      ? plainDose({ amount: preparation.amount, unit })
      : plainDose({ amount: preparation.amountPerKg, unit, per: "kg" });
  const { lowKg, highKg } = preparation;
  const children = lowKg === undefined && highKg === undefined ? "" : `, ${edges(lowKg, highKg, "kg")}`;
  return `Made up \`${id}\`: ${amount} to ${formatNumber(totalMl)} mL with ${diluent}${children} ${cited(citations)}`;
}

function repeatText({
  text,
  maximumDoses,
  intervalMin,
  cumulativeMaximum,
  citations,
}: NonNullable<Use["repeat"]>): string {
  const { byWeight, withinH, ...whole } = cumulativeMaximum ?? {};
  const most = byWeight
    ? byWeight.map((band) => `${mostOf(band).join(" and ")} (${edges(band.lowKg, band.highKg, "kg")})`)
    : mostOf(whole);
  const facts = [
    ...(maximumDoses === undefined ? [] : [`${counted(maximumDoses, "dose")} in all`]),
    ...(intervalMin === undefined ? [] : [`every ${minutes(intervalMin)}`]),
    ...(most.length === 0
      ? []
      : [
          `at most ${most.join(byWeight ? ", " : " and ")}${withinH === undefined ? " over all doses" : ` in ${formatNumber(withinH)} h`}`,
        ]),
  ];
  return `Repeat: ${text}${facts.length === 0 ? "" : ` [${facts.join(", ")}]`} ${cited(citations)}`;
}

function mostOf({ perKg, total }: Pick<CumulativeMaximum, "perKg" | "total">): string[] {
  return [...(perKg ? [plainDose({ ...perKg, per: "kg" })] : []), ...(total ? [plainDose(total)] : [])];
}

function administrationText({
  text,
  overMin,
  maximumRate,
  maximumConcentrationPerMl,
  dilution,
  citations,
}: Use["administration"]): string {
  const facts = [
    ...(overMin === undefined ? [] : [`over ${minutes(overMin)}`]),
    ...(maximumRate === undefined
      ? []
      : [
          `at most ${plainDose({ ...maximumRate.amount, per: maximumRate.perKg ? `kg/${maximumRate.per}` : maximumRate.per })}`,
          ...(maximumRate.maximum
            ? [`never above ${plainDose({ ...maximumRate.maximum, per: maximumRate.per })}`]
            : []),
        ]),
    ...(maximumConcentrationPerMl === undefined
      ? []
      : [`no stronger than ${plainDose({ ...maximumConcentrationPerMl, per: "mL" })}`]),
    ...(dilution === undefined
      ? []
      : [`added to ${describeRule(dilution.volume).join("; ")} of ${dilution.diluent}`]),
  ];
  return `Given: ${text}${facts.length === 0 ? "" : ` [${facts.join(", ")}]`} ${cited(citations)}`;
}

function limitText(limit: ApplicabilityLimit): string {
  const meant =
    limit.by === "age"
      ? edges(limit.lowMonths, limit.highMonths, "months")
      : edges(limit.lowKg, limit.highKg, "kg");
  const effect = limit.effect === "contraindicated" ? "Contraindicated outside" : "Caution outside";
  return `${effect} ${meant}: ${limit.reason} ${cited(limit.citations)}`;
}

function noteText({ text, citations }: Note): string {
  return `${text} ${cited(citations)}`;
}

/** "[bnfc-2018, p 811, *read*]". */
function cited(citations: readonly Citation[]): string {
  const refs = citations.map(({ sourceId, locator, verification }) =>
    [`\`${sourceId}\``, ...(locator === undefined ? [] : [locator]), `*${verification}*`].join(", "),
  );
  return `[${refs.join("; ")}]`;
}

function minutes({ low, high }: { readonly low: number; readonly high: number }): string {
  return low === high ? `${formatNumber(low)} min` : `${formatNumber(low)} to ${formatNumber(high)} min`;
}

function bullets(lines: readonly string[]): string {
  return lines.map((line) => `* ${line}`).join("\n");
}

function counted(value: number, name: string): string {
  return `${formatNumber(value)} ${name}${value === 1 ? "" : "s"}`;
}
