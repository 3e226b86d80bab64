import { FRENCH_NUMBERS, formatNumber } from "@steelyard/core/units";
import type { siteEn } from "./site.en.ts";
import type { Words } from "./words.ts";

const whole = (value: number): string => formatNumber(value, FRENCH_NUMBERS);
const one = (value: number): string => whole(Math.round(value * 10) / 10);

/** The screen of the site in French: machine-translated and reviewed by nobody. */
export const siteFr: Words<typeof siteEn> = {
  intro:
    "Un calibrage ajuste les poids aux enfants de votre lieu. Il s’apprend d’enfants mesurés puis pesés, par «\u202fsteelyard calibrate\u202f» ou à l’écran Étude. Une fois pris ici, il vaut, à partir du prochain enfant, pour chaque poids, dose et cas de cet appareil, jusqu’à ce qu’on le retire.",
  calibration: "Calibrage",
  hint: "le fichier du profil du site\u202f; rien ne quitte cet appareil",
  none: "Aucun\u202f: les poids sont ceux d’un site non calibré, avec un intervalle plus large.",
  takeOff: (name) => `Retirer ${name}`,
  notJson: (file) => `${file} n’est pas un profil de site\u202f: il n’est pas lisible comme JSON.`,
  kept: (name) => `Les poids de cet appareil utilisent maintenant le calibrage pour ${name}.`,
  keptNext: (name) =>
    `Le calibrage pour ${name} servira à partir du prochain enfant\u00a0: le cas à l’écran continue comme il a commencé.`,
  notKept: "Le navigateur refuse de le garder\u00a0: il finit avec cette page.",
  takenOff: "Retiré. Les poids sont ceux d’un site sans calibrage.",
  takenOffNext: "Retiré. À partir du prochain enfant, les poids sont ceux d’un site sans calibrage.",
  unsigned:
    "Personne n’a signé ce calibrage. Un professionnel habilité du site doit le revoir avant tout usage chez des patients.",
  facts: {
    site: "Nom du site",
    made: "Fait",
    children: "À partir de",
    meanError: "Erreur moyenne (estimation moins balance)",
    within10: "À moins de 10\u00a0% de la balance",
    coverage: "Dans l’intervalle à 95\u00a0%",
    rows: "Empreinte des lignes",
    model: "Modèle corporel",
  },
  made: ({ createdOn, signed }) => `${createdOn}, ${signed ? "signé" : "non signé"}`,
  children: ({ children, dates }) =>
    `${whole(children)} enfant${FRENCH_NUMBERS.plural(children) === "one" ? "" : "s"}${dates === undefined ? "" : `, de la pesée du ${dates.from} à celle du ${dates.to}`}`,
  calibrationTitle: "Calibrage",
  calibrationWaits: (name) =>
    name === undefined
      ? "À partir du prochain enfant\u00a0: aucun."
      : `À partir du prochain enfant\u00a0: le calibrage pour ${name}.`,
  formulary: {
    title: "Formulaire",
    intro:
      "Les doses viennent du projet livré avec cette page, jusqu’à ce que votre site prenne ici le sien\u00a0: un fichier signé par «\u202fsteelyard formulary sign\u202f», ou un fichier non signé, qui reste un projet et le dit. À partir du prochain enfant, chaque dose, total et entrée de cas de cet appareil le suit, même sans réseau.",
    file: "Fichier du formulaire",
    hint: "le fichier du formulaire\u202f; rien ne quitte cet appareil",
    draft: (version) => `En usage\u00a0: le projet livré avec la page, ${version}. Personne ne l’a signé.`,
    checking: "Vérification du fichier.",
    kept: (version) => `Les doses de cet appareil suivent maintenant ${version}.`,
    keptNext: (version) =>
      `Gardé. ${version} servira à partir du prochain enfant\u00a0: le cas à l’écran continue comme il a commencé.`,
    notKept: "Le navigateur refuse de le garder\u00a0: il finit avec cette page.",
    takeOff: (version) => `Retirer ${version}`,
    leaveLost: "Utiliser le projet livré avec la page",
    takenOff: "Retiré. Les doses suivent le projet livré avec la page.",
    takenOffNext: "Retiré. À partir du prochain enfant, les doses suivent le projet livré avec la page.",
    draftWaits: "À partir du prochain enfant\u00a0: le projet livré avec la page.",
    waits: (version) => `À partir du prochain enfant\u00a0: ${version}.`,
    refused: (file) => `${file} n’est pas pris, et rien n’est changé.`,
    tooLarge: (mb) => `Il dépasse ${mb}\u00a0Mo\u202f; aucun formulaire n’est si grand.`,
    faults: (count) =>
      FRENCH_NUMBERS.plural(count) === "one"
        ? "Il a une faute\u00a0:"
        : `Il a ${whole(count)} fautes, dont\u00a0:`,
    signedByNobody: "Il se dit signé, sans dire par qui.",
    changedSince: (names) =>
      `Il a été modifié après la signature de ${names}\u00a0: faites-le revoir et signer de nouveau.`,
    facts: {
      version: "Numéro de version",
      title: "Titre",
      signed: "Signé",
      fingerprint: "Empreinte",
      from: "Vient de",
      holds: "Contient",
    },
    signedBy: (signers) =>
      signers.length === 0
        ? "non signé"
        : signers.map(({ name, role, date }) => `${name}, ${role}, le ${date}`).join("\u202f; "),
    fromFile: "un fichier pris sur cet appareil",
    fromDepartment: "le serveur du service",
    holds: (uses, medicines) =>
      `${whole(uses)} indications pour ${whole(medicines)} médicaments, solutés et énergies`,
    unsigned:
      "Personne n’a signé ce formulaire. Un pharmacien ou médecin habilité du site doit le revoir et le signer avant tout usage chez des patients.",
    oneSigner: (count) =>
      `Une seule personne l’a signé, et il a ${whole(count)} ${FRENCH_NUMBERS.plural(count) === "one" ? "médicament à haut risque" : "médicaments à haut risque"}\u00a0: il y faut un second regard.`,
    old: "Il a été signé il y a plus d’un an\u00a0: faites-le revoir.",
    differs: (count) =>
      count === 0
        ? "Rien n’y diffère du projet livré avec la page."
        : FRENCH_NUMBERS.plural(count) === "one"
          ? "1 différence avec le projet livré avec la page"
          : `${whole(count)} différences avec le projet livré avec la page`,
    differsNow: "Comparer au projet",
    moreDifferences: (count) =>
      `et ${whole(count)} de plus\u00a0: «\u202fsteelyard formulary diff\u202f» les donne toutes.`,
  },
  department: {
    title: "Service",
    intro:
      "Là où le service a un serveur, cet appareil peut lui envoyer ses cas et montrer ceux des autres appareils. Poids et doses n’en ont jamais besoin, et les cas sont d’abord gardés ici. Qui gère le serveur inscrit l’appareil et reçoit pour lui un jeton, une seule fois\u00a0: «\u202fsteelyard device add\u202f».",
    page: "La page du service\u00a0: cas, formulaire, personnes",
    token: "Jeton de cet appareil",
    link: "Relier cet appareil",
    noToken: "Ce n’est pas un jeton\u00a0: il a au moins 32 lettres, chiffres, - et _, sans espace.",
    unlink: "Délier cet appareil",
    unlinkKeep: "Délier, et garder ce que le service a remis",
    unlinkDrop: "Délier, et ne plus l’utiliser à partir du prochain enfant",
    holds: {
      formulary: "Le formulaire vient du service.",
      calibration: "Le calibrage vient du service.",
    },
    refusedDocument: {
      formulary: "Le formulaire que le service remet n’est pas utilisé\u00a0:",
      calibration: "Le calibrage que le service remet n’est pas utilisé\u00a0:",
    },
    notVerified: {
      "changed-on-the-way":
        "ce n’est pas ce qui a été envoyé. Il sera redemandé à la prochaine ouverture de la page.",
      faulty: "il a des fautes, ou vient d’une autre version de Steelyard.",
      "not-signed": "personne ne l’a signé.",
      "edited-since-signed": "il a été modifié après la signature.",
    },
    asking: "Le serveur est interrogé.",
    reached: "Le serveur répond.",
    waiting: (count) =>
      count === 0
        ? "Il a chaque événement de cet appareil."
        : count === 1
          ? "1 événement attend."
          : `${whole(count)} événements attendent.`,
    refused: (count) =>
      FRENCH_NUMBERS.plural(count) === "one"
        ? `${whole(count)} événement n’a pas été pris et reste sur cet appareil\u00a0:`
        : `${whole(count)} événements n’ont pas été pris et restent sur cet appareil\u00a0:`,
    reasons: {
      faulty: "il contient quelque chose que le serveur ne sait pas lire",
      "id-taken": "le serveur a un autre événement sous le même numéro",
      "case-purged": "le service a supprimé ce cas selon ses règles",
    },
    trouble: {
      unreachable: "Le serveur ne répond pas\u202f; il sera interrogé de nouveau tout seul.",
      "no-server": "Il n’y a pas de serveur de service à cette adresse.",
      "not-enrolled": "Le serveur ne connaît pas ce jeton, ou plus. Déliez, et demandez-en un autre.",
      "update-needed": "Le serveur est d’une autre version\u00a0: rechargez la page avec le réseau.",
    },
  },
  change: (before, after) => `${one(before)}\u00a0% avant, ${one(after)}\u00a0% après`,
};
