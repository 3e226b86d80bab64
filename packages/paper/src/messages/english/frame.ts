import type { FrameMessages } from "../frame-messages.ts";

export const ENGLISH_FRAME: FrameMessages = {
  printAtFull: "Print at 100 %, never “fit to page”.",
  measureRulers: "Measure both rulers; throw the sheet away if one is off.",
  millimetres: "mm",
  inches: "in",
  rulerAcross: "Proof ruler across the page: 100 mm and 4 in",
  rulerAlong: "Proof ruler along the page: 100 mm and 4 in",
  draft: "DRAFT",
  draftLong: "DRAFT, not signed",
  pageOf: ({ page, pages }) => `page ${page} of ${pages}`,
  versions: ({ software, model }) => `steelyard ${software}, body model ${model}`,
  madeAndExpires: ({ madeOn, expiresOn }) => `Made ${madeOn}. Do not use after ${expiresOn}.`,
  notCalibrated: "Not calibrated to any site",
  calibrated: ({ name, children, createdOn, signed }) =>
    `Calibrated to ${name} by ${children} children, ${createdOn}, ${signed ? "signed" : "not signed"}`,
  noFormulary: "No formulary: nobody has signed this sheet",
  formularyUnsigned: ({ title, version }) => `${title}, ${version}: not signed`,
  formularySigned: ({ title, version, name, role, date }) =>
    `${title}, ${version}, signed by ${name}, ${role}, ${date}`,
  secondSigner: ({ name, role, date }) => `and by ${name}, ${role}, ${date}`,
  fingerprint: ({ short }) => `Fingerprint ${short}`,
  fingerprintCode: "QR code of the fingerprint of this sheet",
  cautions: ({ title, text }) => `${title}: ${text}`,
  formularyWords: "",
};
