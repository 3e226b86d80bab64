import { FRENCH_NUMBERS, formatNumber } from "@steelyard/core/units";
import type { en } from "./en.ts";
import type { Words } from "./words.ts";

const number = (value: number): string => formatNumber(value, FRENCH_NUMBERS);
const s = (value: number): string => (FRENCH_NUMBERS.plural(value) === "one" ? "" : "s");

/** The page in French: machine-translated and reviewed by nobody. */
export const fr: Words<typeof en> = {
  name: "Steelyard",
  screens: {
    bedside: "Au chevet",
    reader: "Second lecteur",
    casebook: "Registre",
    practice: "Entraînement",
    study: "Étude",
    paper: "Papier",
    site: "Ce site",
  },
  screenFor: {
    bedside: "Poids et doses à partir de deux mesures",
    reader: "Une autre personne mesure, à l’aveugle",
    casebook: "Cas de cet appareil, poids ultérieurs, export",
    practice: "Lire le mètre ruban sur des enfants inventés",
    study: "Juger des méthodes d’après la balance, à partir d’un fichier",
    paper: "Bandes et grilles à l’échelle, à imprimer",
    site: "Son formulaire et son calibrage, pour chaque dose et poids ici",
  },
  windowTitle: (screen) => `Steelyard ${screen}`,
  menuName: "Écrans",
  menu: (screen) => `${screen}, autres écrans`,
  screenComing: "Chargement.",
  screenMissing: "Cet écran n’a pas pu être chargé.",
  nextChild: "Nouvel enfant",
  bringBack: "Revenir au dernier enfant",
  carriedOver:
    "Ces valeurs ont été saisies avant le rechargement de la page. Est-ce toujours le même enfant\u202f?",
  entry: "Mesures",
  fields: {
    lengthCm: { label: "Longueur couchée", unit: "cm", hint: "du vertex au talon" },
    armMm: { label: "Périmètre brachial", unit: "mm", hint: "à mi-bras, relâché" },
    ageMonths: { label: "Âge", unit: "", hint: "comme 9\u00a0ans, 18\u00a0mois ou 3\u00a0sem" },
    waistCm: { label: "Tour de taille", unit: "cm", hint: "au-dessus des hanches" },
    thighCm: { label: "Périmètre de cuisse", unit: "cm", hint: "à mi-cuisse" },
    calfCm: { label: "Périmètre de mollet", unit: "cm", hint: "au plus large" },
    headCm: { label: "Périmètre crânien", unit: "cm", hint: "au plus large" },
    carerKg: { label: "Poids, selon l’accompagnant", unit: "kg", hint: "compte comme une estimation" },
    earlierKg: { label: "Poids, pesée antérieure", unit: "kg", hint: "avec sa date, ou l’âge d’alors" },
    earlierDate: { label: "Date de cette pesée", unit: "", hint: "à la place de l’âge d’alors" },
    birthDate: { label: "Date de naissance", unit: "", hint: "à la place de l’âge" },
    lengthCm2: { label: "Longueur, deuxième lecture", unit: "cm", hint: "ruban ôté puis reposé" },
    armMm2: { label: "Bras, deuxième lecture", unit: "mm", hint: "ruban ôté puis reposé" },
    lengthCm3: {
      label: "Longueur, troisième lecture",
      unit: "cm",
      hint: "la valeur médiane des trois compte",
    },
    armMm3: { label: "Bras, troisième lecture", unit: "mm", hint: "la valeur médiane des trois compte" },
    kneeHeightCm: { label: "Hauteur du genou", unit: "cm", hint: "du talon au dessus du genou plié" },
    tibiaCm: { label: "Longueur du tibia", unit: "cm", hint: "de l’interligne du genou à la malléole" },
    ulnaCm: { label: "Longueur de l’ulna", unit: "cm", hint: "du coude au poignet, demande l’âge" },
    earlierAgeMonths: {
      label: "Âge à cette pesée",
      unit: "",
      hint: "comme 9\u00a0ans, 18\u00a0mois ou 3\u00a0sem",
    },
    scaleKg: { label: "Poids, balance", unit: "kg", hint: "lu maintenant, remplace l’estimation" },
    burnPercent: {
      label: "Peau brûlée",
      unit: "%",
      hint: "de la surface du corps, rougeurs non comptées",
    },
  },
  choices: {
    sex: {
      label: "Sexe",
      options: [
        ["", "non connu"],
        ["f", "fille"],
        ["m", "garçon"],
      ],
    },
    posture: {
      label: "Enfant",
      options: [
        ["", "position non dite"],
        ["lying", "couché"],
        ["half-sitting", "demi-assis"],
        ["seated", "assis"],
      ],
    },
    people: {
      label: "Mesuré par",
      options: [
        ["", "non dit"],
        ["1", "une personne"],
        ["2", "deux personnes"],
      ],
    },
    build: {
      label: "Corpulence à l’œil",
      options: [
        ["", "non jugée"],
        ["very-thin", "très mince"],
        ["thin", "mince"],
        ["average", "moyenne"],
        ["heavy", "forte"],
        ["very-heavy", "très forte"],
      ],
    },
    oedema: {
      label: "Œdème",
      options: [
        ["", "non"],
        ["yes", "oui"],
      ],
    },
    missingLimb: {
      label: "Membre manquant",
      options: [
        ["", "aucun"],
        ["hand", "main"],
        ["forearm", "avant-bras et main"],
        ["arm", "bras"],
        ["foot", "pied"],
        ["lower-leg", "jambe et pied"],
        ["leg", "membre inférieur"],
      ],
    },
    pregnant: {
      label: "Grossesse",
      options: [
        ["", "non"],
        ["yes", "oui"],
      ],
    },
  },
  unitNames: { cm: "en centimètres", mm: "en millimètres", kg: "en kilogrammes" },
  take: (proposal) => `Prendre ${proposal}`,
  ask: {
    sex: ["Sexe", "Ajouter le sexe"],
    ageMonths: ["Âge", "Ajouter l’âge"],
    waistCm: ["Tour de taille", "Ajouter le tour de taille"],
    thighCm: ["Cuisse", "Ajouter le périmètre de cuisse"],
    calfCm: ["Mollet", "Ajouter le périmètre de mollet"],
    headCm: ["Tête", "Ajouter le périmètre crânien"],
    lengthCm2: ["Deuxième lecture", "Ajouter une deuxième lecture"],
    lengthCm3: ["Troisième lecture", "Ajouter une troisième lecture"],
    kneeHeightCm: ["Ne peut être allongé", "Ajouter un segment du corps\u00a0: ne peut être allongé"],
    build: ["Corpulence à l’œil", "Ajouter la corpulence à l’œil"],
    carerKg: ["Dire de l’accompagnant", "Ajouter le poids selon l’accompagnant"],
    earlierKg: ["Pesée antérieure", "Ajouter une pesée antérieure"],
    oedema: ["Œdème, membre, grossesse", "Ajouter un œdème, un membre manquant ou une grossesse"],
    scaleKg: ["Balance", "Ajouter le poids lu sur la balance"],
    burnPercent: ["Brûlure", "Ajouter la part brûlée de la surface du corps"],
  },
  secondReader: "Second lecteur",
  askAll: ["Plus", "Ajouter autre chose"],
  addMore: "Ce que l’on sait d’autre",
  narrows: ({ percent }) => `resserre à ±${number(percent)}\u00a0%`,
  narrowsHere: ({ percent }) => `intervalle à ±${number(percent)}\u00a0%`,
  how: "Comment",
  howTo: (name) => `Comment mesurer\u00a0: ${name}`,
  sumOfParts: ({ parts, sum }) => `${parts} = ${sum.replace(".", ",")}\u00a0cm.`,
  readings: ({ field, numbers, value, spread, limit, needsThird }) => {
    const unit = field === "lengthCm" ? "cm" : "mm";
    const apart = `écart de ${number(spread)}\u00a0${unit}`;
    return needsThird
      ? `Lectures avec un ${apart}\u202f; des lectures soigneuses diffèrent de ${number(limit)}\u00a0${unit} au plus. Lisez une troisième fois\u00a0: la valeur médiane compte.`
      : `${numbers.length === 2 ? "Deux lectures" : "Trois lectures"}, ${apart}\u00a0: ${number(value)}\u00a0${unit} compte.`;
  },
  notABirthDate: "Aucun enfant n’est né ce jour-là. L’année est-elle juste\u202f?",
  ageOfBirthDate: (months) => {
    if (months < 24) return `Âge\u00a0: ${number(Math.round(months * 10) / 10)}\u00a0mois.`;
    const years = Math.floor(months / 12);
    return `Âge\u00a0: ${number(years)}\u00a0an${s(years)} et ${number(Math.floor(months % 12))}\u00a0mois.`;
  },
  ageBeforeBirthDate: "L’âge saisi compte\u202f; la date de naissance est laissée de côté.",
  notAnEarlierDate: "Ce jour est encore à venir.",
  earlierNeedsAge: "Un poids antérieur demande aussi l’âge actuel.",
  earlierBeforeBirth: "Ce jour précède la naissance.",
  weight: "Poids",
  total: "Poids total",
  ideal: "Poids idéal",
  beam: { ideal: "idéal", carer: "accompagnant", earlier: "antérieur" },
  backToTop: "vers les mesures",
  idealUnknown: "inconnu sans longueur",
  range: "intervalle à 95\u00a0%",
  rangeOfScale: "lu sur une balance",
  to: "à",
  kg: "kg",
  noWeightYet: "Pas encore de poids",
  sheet: "Doses",
  search: "Médicament, usage ou matériel",
  found: (count, shown) =>
    count === 0
      ? "Rien sur la feuille ne porte ces mots."
      : count > shown
        ? `${number(count)} trouvé${s(count)}, dont ${number(shown)} affiché${s(shown)}\u00a0: précisez.`
        : `${number(count)} trouvé${s(count)}.`,
  uses: (count) => `${number(count)} usage${s(count)}`,
  doseComing: "en cours de calcul",
  dosesMissing: "Les doses n’ont pas pu être chargées.",
  loadAgain: "Recharger la page",
  lookup: {
    groups: { equipment: "Matériel", signs: "Constantes normales" },
  },
  shortList: "Liste courte",
  firstSteps: {
    title: "Deux mesures d’abord",
    steps: [
      {
        title: "Longueur couchée",
        text: "Enfant à plat sur le dos, jambes tendues. Ruban sur le lit à côté de l’enfant, du sommet du crâne au talon, non aux orteils. En centimètres.",
      },
      {
        title: "Périmètre brachial",
        text: "Bras nu, à mi-distance entre la pointe de l’épaule et le coude, pendant et relâché. Ruban au contact de la peau sans la serrer. En millimètres.",
      },
    ],
    end: "Le poids et les doses apparaissent pendant la saisie. La longueur seule donne aussi un poids, avec un intervalle plus large. Rien ne quitte cet appareil.",
  },
  versions: ({ software, model, formulary, formularySigned, own, site }) =>
    `Steelyard ${software}, modèle corporel ${model}, formulaire ${formulary} (${
      formularySigned
        ? `signé par ${(own?.signers ?? []).map(({ name, role, date }) => `${name}, ${role}, le ${date}`).join("\u202f; ")}`
        : "projet, non signé"
    }${own === undefined ? "" : `\u202f; empreinte ${own.fingerprint.slice(0, 12)}`}), ${
      site === undefined
        ? "non calibré pour ce site"
        : `calibré pour ${site.name} le ${site.createdOn} (${site.signed ? "signé" : "non signé"})`
    }.`,
  otherModel: ({ name, model }) =>
    `Le calibrage pour ${name} a été fait pour le modèle corporel ${model}, qui n’est pas celui d’ici. Il n’est pas utilisé\u202f: l’intervalle est celui d’un site non calibré. Refaites-le.`,
  lostFormulary: ({ version, why }) =>
    `Le formulaire de ce site (${version}) ${
      why === "unfit" ? "ne convient pas à cette version de Steelyard" : "n’est plus lisible sur cet appareil"
    } et n’est pas utilisé\u00a0: les doses sont celles du projet livré avec la page. Chargez-le de nouveau sous «\u202fCe site\u202f».`,
  rulesWait:
    "Un autre formulaire ou calibrage du site est prêt\u00a0: il servira à partir du prochain enfant.",
  takeOut: "Retirer",
  notInFormulary: (names) => `Dans votre liste courte, mais pas dans le formulaire utilisé\u00a0: ${names}.`,
  spoken: ({ total, range, ideal }) =>
    `Poids total ${total}, intervalle à 95\u00a0% ${range}.${ideal === undefined ? "" : ` Poids idéal ${ideal}.`} Les doses se trouvent plus bas, par problème.`,
  language: {
    choose: "Langue de la page",
    missing: (name) => `${name}\u00a0: chargement impossible. Réessayez avec le réseau.`,
    formulary:
      "Les noms, usages et précautions des médicaments viennent du formulaire et restent dans sa langue.",
  },
  offlineReady: "Prêt à fonctionner sans réseau.",
  updateWaits: "Une version plus récente est prête et démarrera à la prochaine ouverture de la page.",
};
