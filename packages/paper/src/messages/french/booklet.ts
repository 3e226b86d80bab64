import type { BookletMessages } from "../booklet-messages.ts";

export const FRENCH_BOOKLET: BookletMessages = {
  title: "Livret de doses",
  contentsTitle: "Trouver le poids",
  how: "Chaque ligne dit selon quel poids elle va\u00a0: total, idéal, ajusté ou maigre. Ouvrir la page de ce poids\u00a0: pour un enfant lourd, le poids total et le poids idéal sont sur des pages différentes. Un enfant plus léger que l’idéal\u00a0: prendre le poids total pour chaque ligne. Dans une page, aucune dose ne change de plus de 10\u00a0%\u202f; elle est calculée pour le poids du milieu.",
  step: ({ from, to }) => (from === to ? `${from}\u00a0kg` : `${from} à ${to}\u00a0kg`),
  computedFor: ({ kg, lengthCm }) =>
    `Calculé pour ${kg}\u00a0kg. Matériel et signes pour ${lengthCm}\u00a0cm, la longueur couchée dont c’est le poids idéal.`,
  tabUnit: "kg",
  pageColumn: "page",
  weightColumn: "poids, kg",
  basis: { total: "total", ideal: "idéal", adjusted: "ajusté", lean: "maigre" },
  volume: ({ ml, strength }) => `${ml} de ${strength}`,
  dilute: ({ take, strength, add, diluent, result }) =>
    `Diluer d’abord\u00a0: ${take} de ${strength} et ${add} de ${diluent} donnent ${result}.`,
  addTo: ({ ml, diluent }) => `Ajouter à ${ml} de ${diluent}.`,
  rate: ({ mlPerH, concentration }) => `${mlPerH} de ${concentration}`,
  further: ({ dose }) => `puis ${dose}`,
  notUnder: ({ minutes }) => `Pas en moins de ${minutes}\u00a0min.`,
  atLeast: ({ ml }) => `Dans ${ml} ou plus.`,
  syringe: ({ amount, totalMl, diluent, start, low, high, perMl }) =>
    `Seringue\u00a0: ${amount} complétés à ${totalMl} avec ${diluent}\u202f; départ ${start}, étendue ${low} à ${high}\u202f; 1\u00a0mL/h donne ${perMl}.`,
  maximum: "maximum",
  minimum: "minimum",
  rounded: ({ percent, isLess }) => `arrondi, ${isLess ? "−" : "+"}${percent}\u00a0%`,
  noDose: ({ because }) => `Pas de dose\u00a0: ${because}`,
  equipmentTitle: "Matériel",
  beforeGivingTitle: "Avant de donner",
  beforeGivingNote: "Vaut pour tout poids\u00a0: quand ne pas donner, à quoi prendre garde, que surveiller",
  beforeGivingAt: ({ page }) =>
    `Quand ne pas donner un médicament, et à quoi prendre garde, figure derrière les poids, à partir de la page ${page}.`,
  notFor: "Pas pour\u00a0:",
  beware: "Attention\u00a0:",
  watch: "Surveiller\u00a0:",
  signsTitle: "Signes normaux",
};
