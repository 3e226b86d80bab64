import type { ChildSheetMessages } from "../child-sheet-messages.ts";

export const FRENCH_CHILD_SHEET: ChildSheetMessages = {
  title: "Feuille de l’enfant",
  subtitle: "Pour cet enfant seul\u202f; à jeter une fois l’enfant pesé",
  name: "Nom ou numéro",
  weighed: "Poids sur la balance, kg, et heure",
  total: "poids total",
  ideal: "poids idéal",
  range: ({ low, high }) => `étendue 95\u00a0% ${low} à ${high}`,
  given: "donné à",
  by: "par",
  checked: "contrôlé",
  workingTitle: "Feuille de l’enfant, calculs",
  workingSubtitle: "Comment chaque dose a été calculée, à contrôler par une seconde personne",
  equipmentTitle: "Matériel",
  signsTitle: "Signes normaux",
};
