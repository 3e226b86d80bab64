import type { Formulary, ProblemId } from "@steelyard/core/dosing";
import { medicineFiles } from "./medicines.ts";
import sources from "./sources.json" with { type: "json" };

/** Energies that defibrillators can usually be set to, J; a site puts in those of its own devices. */
const deviceEnergiesJ = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 15, 20, 30, 50, 70, 100, 120, 150, 170, 200];

/** Airway, breathing, circulation, disability, then the rest: the order of an assessment (common practice). */
const problemOrder: readonly ProblemId[] = [
  "arrest",
  "airway",
  "breathing",
  "anaphylaxis",
  "shock",
  "bleeding",
  "seizure",
  "brain",
  "salts-and-sugar",
  "infection",
  "poisoning",
  "pain",
  "fluids",
];

/**
 * The formulary that Steelyard ships with: an unsigned draft.
 *
 * Every dose carries its source and whether it was read there; nothing in it may be used on a patient before a
 * licensed pharmacist or physician of the site has reviewed, changed and signed it.
 *
 * ```ts
 * import { draftFormulary } from "@steelyard/formulary";
 * import assert from "node:assert/strict";
 * assert.equal(draftFormulary.signed, false);
 * ```
 */
export const draftFormulary: Formulary = {
  id: "steelyard-draft",
  version: "draft 0.1",
  title: "Steelyard draft formulary",
  signed: false,
  deviceEnergiesJ,
  problemOrder,
  // The type is asserted, not checked, so that no schema library is loaded with the first screen; a test runs
  // the whole validation over these files.
  medicines: medicineFiles as Formulary["medicines"],
  sources: sources as Formulary["sources"],
};
