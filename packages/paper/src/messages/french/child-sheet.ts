import type { ChildSheetMessages, SheetNumber } from "../child-sheet-messages.ts";

export const FRENCH_CHILD_SHEET: ChildSheetMessages = {
  title: "Feuille de l’enfant",
  name: "Nom ou numéro",
  weighed: "Poids sur la balance, kg, et heure",
  total: "poids total",
  ideal: "poids idéal",
  range: ({ low, high }) => `étendue 95\u00a0% ${low} à ${high}`,
  given: "donné à",
  by: "par",
  checked: "contrôlé",
  workingTitle: "Feuille de l’enfant, calculs",
  front: (sheet) =>
    `${sideOf("Recto", sheet)}\u00a0: pour cet enfant seul\u202f; à jeter une fois l’enfant pesé`,
  back: (sheet) => `${sideOf("Verso", sheet)}\u00a0: calculs, à contrôler par une seconde personne`,
  furtherTitle: "Autres doses",
  notesTitle: "Feuille de l’enfant, autres doses",
  notes: ({ sheet, sheets }) =>
    `Feuille ${sheet} sur ${sheets}\u00a0: pour cet enfant seul\u202f; lignes pour les doses qui ne sont pas sur les feuilles`,
};

function sideOf(side: string, { sheet, sheets }: SheetNumber): string {
  return sheets === 1 ? side : `${side} de la feuille ${sheet} sur ${sheets}`;
}
