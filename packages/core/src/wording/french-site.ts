import { formatNumber } from "../units/index.ts";
import type { SiteCatalogue } from "./english-site.ts";
import { FRENCH_VALUES } from "./french-values.ts";

const n = (value: number): string => formatNumber(value, FRENCH_VALUES.numbers);
const percent = (value: number): string => n(Math.round(value));

/** Machine-translated and reviewed by nobody; `FRENCH_LANGUAGE` says so to the reader. */
export const FRENCH_SITE: SiteCatalogue = {
  calibration: {
    "too-few-children": ({ children, fewest }) =>
      `Un calibrage demande au moins ${n(fewest)} enfants mesurés et pesés, et il y en a ${n(children)}\u00a0: moins en disent moins que ce que l’on sait sans eux. Cent valent mieux.`,
    "incoherent-rows": ({ within20, least }) =>
      `Même au mieux, l’estimation n’est à moins de 20\u00a0% de la balance que chez ${percent(within20)}\u00a0% de ces enfants, et ${percent(least)}\u00a0% est le minimum de toute population. Des colonnes ont peut-être été interverties, une unité peut être fausse, ou les poids être ceux d’autres enfants\u00a0: corrigez les lignes et recommencez.`,
  },
  profile: {
    "unknown-format": ({ formatVersion }) =>
      formatVersion === undefined
        ? "Ce n’est pas un profil de site\u00a0: créez-en un avec steelyard calibrate."
        : `C’est un profil de site au format ${n(formatVersion)}, plus récent que ce logiciel\u00a0: mettez le logiciel à jour, ou calibrez de nouveau.`,
    "other-model": ({ profileModel, currentModel }) =>
      `Il a été fait pour le modèle corporel ${profileModel}, et celui-ci est le modèle corporel ${currentModel}\u00a0: son décalage y a un autre sens. Calibrez de nouveau à partir des lignes.`,
  },
  fault: {
    missing: () => "manque",
    "not-an-object": () => "doit être un objet",
    "not-a-list": () => "doit être une liste",
    "not-a-text": () => "doit être un texte de 1 à 200 caractères",
    "not-a-date": () => "doit être une date comme 2026-11-25",
    "not-true-or-false": () => "doit être vrai ou faux (true, false)",
    "not-a-sha256": () => "doit compter 64 chiffres hexadécimaux",
    "not-a-number": () => "doit être un nombre",
    "not-a-whole-number": () => "doit être un nombre entier",
    "out-of-range": ({ value, low, high }) =>
      `doit être ${high >= 1e12 ? `${n(low)} ou plus` : `entre ${n(low)} et ${n(high)}`}, et vaut ${n(value)}`,
    unexpected: ({ value, expected }) => `doit être ${expected}, et vaut ${value}`,
  },
  wholeFile: "le fichier",
  nextMeasurement: ({ girth, percent: width }) =>
    `Mesurer ${girth} resserrerait l’intervalle à environ ±${width}\u00a0%.`,
  girth: {
    armMm: "le bras",
    waistCm: "le tour de taille",
    thighCm: "la cuisse",
    calfCm: "le mollet",
    headCm: "la tête",
  },
};
