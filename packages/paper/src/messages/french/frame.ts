import type { FrameMessages } from "../frame-messages.ts";

export const FRENCH_FRAME: FrameMessages = {
  printAtFull: "Imprimer à 100\u00a0%, jamais «\u202fajuster à la page\u202f».",
  measureRulers: "Mesurer les deux règles\u202f; jeter la feuille si l’une est fausse.",
  millimetres: "mm",
  inches: "po",
  rulerAcross: "Règle de contrôle en travers de la page\u00a0: 100\u00a0mm et 4\u00a0pouces",
  rulerAlong: "Règle de contrôle le long de la page\u00a0: 100\u00a0mm et 4\u00a0pouces",
  draft: "BROUILLON",
  draftLong: "BROUILLON, non signé",
  pageOf: ({ page, pages }) => `page ${page} sur ${pages}`,
  versions: ({ software, model }) => `steelyard ${software}, modèle corporel ${model}`,
  madeAndExpires: ({ madeOn, expiresOn }) => `Fait le ${madeOn}. Ne pas utiliser après le ${expiresOn}.`,
  notCalibrated: "Non calibré pour un site",
  calibrated: ({ name, children, createdOn, signed }) =>
    `Calibré pour ${name} par ${children} enfants, ${createdOn}, ${signed ? "signé" : "non signé"}`,
  noFormulary: "Sans formulaire\u00a0: personne n’a signé cette feuille",
  formularyUnsigned: ({ title, version }) => `${title}, ${version}\u00a0: non signé`,
  formularySigned: ({ title, version, name, role, date }) =>
    `${title}, ${version}, signé par ${name}, ${role}, ${date}`,
  secondSigner: ({ name, role, date }) => `et par ${name}, ${role}, ${date}`,
  fingerprint: ({ short }) => `Empreinte ${short}`,
  fingerprintCode: "Code QR de l’empreinte de cette feuille",
  cautions: ({ title, text }) => `${title}\u00a0: ${text}`,
  formularyWords: "Les mots du formulaire restent en anglais.",
};
