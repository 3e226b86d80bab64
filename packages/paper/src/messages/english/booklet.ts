import type { BookletMessages } from "../booklet-messages.ts";

export const ENGLISH_BOOKLET: BookletMessages = {
  title: "Dose booklet",
  contentsTitle: "Find the weight",
  how: "Every line says which weight it goes by: total, ideal, adjusted or lean. Open the page of that weight: for a heavy child the total and the ideal weight are on different pages. A child lighter than ideal: take the total weight for every line. Within a page no dose changes by more than 10 %; it is computed for the weight in its middle.",
  step: ({ from, to }) => (from === to ? `${from}\u00a0kg` : `${from} to ${to}\u00a0kg`),
  computedFor: ({ kg, lengthCm }) =>
    `Computed for ${kg} kg. Equipment and signs for ${lengthCm} cm, the length at which that is the ideal weight.`,
  tabUnit: "kg",
  pageColumn: "page",
  weightColumn: "weight, kg",
  basis: { total: "total", ideal: "ideal", adjusted: "adjusted", lean: "lean" },
  volume: ({ ml, strength }) => `${ml} of ${strength}`,
  dilute: ({ take, strength, add, diluent, result }) =>
    `First dilute: ${take} of ${strength} and ${add} of ${diluent} give ${result}.`,
  addTo: ({ ml, diluent }) => `Add to ${ml} of ${diluent}.`,
  rate: ({ mlPerH, concentration }) => `${mlPerH} of ${concentration}`,
  further: ({ dose }) => `then ${dose}`,
  notUnder: ({ minutes }) => `Not in less than ${minutes}\u00a0min.`,
  atLeast: ({ ml }) => `In ${ml} or more.`,
  syringe: ({ amount, totalMl, diluent, start, low, high, perMl }) =>
    `Syringe: ${amount} made up to ${totalMl} with ${diluent}; start ${start}, range ${low} to ${high}; 1\u00a0mL/h gives ${perMl}.`,
  maximum: "maximum",
  minimum: "minimum",
  rounded: ({ percent, isLess }) => `rounded ${isLess ? "down" : "up"} ${percent}\u00a0%`,
  noDose: ({ because }) => `No dose: ${because}`,
  equipmentTitle: "Equipment",
  signsTitle: "Normal signs",
  beforeGivingTitle: "Before giving",
  beforeGivingNote: "Holds for every weight: when not to give it, what to beware of, what to watch",
  beforeGivingAt: ({ page }) =>
    `When not to give a medicine, and what to beware of, stands behind the weights, from page ${page}.`,
  notFor: "Not for:",
  beware: "Beware:",
  watch: "Watch:",
};
