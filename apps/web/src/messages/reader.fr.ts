import { FRENCH_NUMBERS, formatNumber } from "@steelyard/core/units";
import type { readerEn } from "./reader.en.ts";
import type { Words } from "./words.ts";

const units = { lengthCm: "cm", armMm: "mm" } as const;
const names = { lengthCm: "Longueur couchée", armMm: "Périmètre brachial" } as const;
const number = (value: number): string => formatNumber(value, FRENCH_NUMBERS);

/** The second reader in French: machine-translated and reviewed by nobody. */
export const readerFr: Words<typeof readerEn> = {
  intro: "L’autre personne mesure de nouveau, sans voir les premières valeurs.",
  nothingYet: "Mesurez d’abord la longueur et le bras à l’écran Au chevet.",
  toBedside: "Vers Au chevet",
  here: "Sur cet appareil",
  hereHow: "Passez l’appareil. Les premières valeurs restent cachées jusqu’aux secondes.",
  handOver: "Passer l’appareil",
  elsewhere: "Sur un autre appareil",
  elsewhereHow:
    "L’autre appareil ouvre cette page par le code, avec ou sans réseau. Sa réponse revient sous forme de code.",
  askCode: "Code pour l’autre appareil",
  answerCode: "Code de l’autre appareil",
  answerHint: "huit signes",
  scan: "Lire avec la caméra",
  scanning: "Dirigez la caméra vers le code de l’autre appareil.",
  stopScanning: "Arrêter",
  noCamera: "La caméra est inutilisable. Tapez le code.",
  mistyped: "Ce n’est pas un code de réponse. Vérifiez chaque signe.",
  otherAsking: "Ce code répond à une autre demande, peut-être pour un autre enfant. Demandez de nouveau.",
  compare: "Comparer",
  blindTitle: "Pour le second lecteur",
  blindIntro: "Reposez le ruban et saisissez ce que vous lisez. Ne demandez à personne la première lecture.",
  done: "Terminé",
  cancel: "Annuler",
  amSecond: "Lire pour un autre appareil",
  askHint: "trois signes, du premier appareil",
  go: "Continuer",
  noAsk: "Ce n’est pas un code de demande. Vérifiez chaque signe.",
  showCode: "Créer le code",
  answerTitle: "Montrez ou lisez ce code au premier lecteur",
  again: "Modifier les valeurs",
  agreement: "Concordance",
  what: "Mesure",
  first: "Première",
  second: "Seconde",
  apart: "Écart",
  names: { ...names, weight: "Poids" },
  value: (field, value) => `${number(value)}\u00a0${units[field]}`,
  inMm: (mm) => `${number(mm)}\u00a0mm`,
  percent: (percent) => `${number(percent)}\u00a0%`,
  within: (field, limit) =>
    `${names[field]}\u00a0: dans les ${number(limit)}\u00a0${units[field]} dont diffèrent des lectures soigneuses.`,
  beyond: (field, limit) =>
    `${names[field]}\u00a0: au-delà des ${number(limit)}\u00a0${units[field]} dont diffèrent des lectures soigneuses. Lisez une troisième fois.`,
  limitSource:
    "La limite est de 2,77 erreurs techniques de mesure, telles que deux tests de standardisation les donnent chez un même observateur (longueurs 0,63\u00a0cm, bras 3,15\u00a0mm)\u202f; 19 paires sur 20 y restent.",
  takeIn: "Retenir les deux lectures",
  takeInThird: "Retenir les deux et lire une troisième fois",
  discard: "Écarter la seconde",
};
