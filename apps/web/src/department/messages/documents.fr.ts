import type { Words } from "../../messages/words.ts";
import { frenchCount, frenchNumber } from "./counted.ts";
import type { documentsEn } from "./documents.en.ts";

export const documentsFr: Words<typeof documentsEn> = {
  versions: "Toutes les versions tenues",
  noVersions: "Aucune version encore.",
  made: ({ person, time }) => `écrite par ${person}, ${time}`,
  draft: "ébauche non signée, pour un relecteur habilité",
  signed: "signée",
  inForce: "en vigueur",
  publishedBefore: "a été en vigueur",
  noneInForce:
    "Rien n’est en vigueur\u00a0: les appareils utilisent ce qui est venu avec le logiciel, une ébauche non signée pour un relecteur habilité.",
  inForceNow: (label) => `En vigueur\u00a0: ${label}.`,
  open: "Ouvrir",
  missing: "Cette version n’existe pas.",
  unreadable:
    "Cette page ne sait pas lire cette version. Rechargez la page\u202f; elle est peut-être d’une autre version.",
  all: "Toutes les versions",
  signing: "Qui a signé",
  needs: (n, total) =>
    `${frenchNumber(n)} sur ${frenchCount(total, "signature nécessaire", "signatures nécessaires")}.`,
  fourEyes: (medicines) =>
    `Deux relecteurs doivent signer, dont aucun ne l’a écrite, car elle contient des médicaments à haut risque\u00a0: ${medicines}.`,
  twoEyes: "Un relecteur doit signer.",
  signature: ({ person, registration, time }) => `${person}, ${registration}, ${time}`,
  countsNot: "ne compte pas\u00a0: écrite par le signataire, ou celui-ci n’est plus relecteur",
  noSignature: "Personne n’a signé.",
  signTitle: "Signer cette version",
  notReviewer: "Seul un relecteur habilité peut signer.",
  ownWork:
    "Vous avez écrit cette version. Comme elle contient des médicaments à haut risque, d’autres doivent la signer.",
  hasSigned: "Vous avez signé cette version.",
  statement:
    "Je suis habilité à en répondre. J’ai lu cette version en entier, je l’ai comparée aux sources et aux règles de ce lieu, et elle peut servir ici.",
  statementMissing: "Sans cette déclaration, ce n’est pas une signature.",
  registration: "Habilitation ou inscription",
  registrationHint: "registre et numéro, tels qu’ils figurent sous la signature",
  password: "Votre mot de passe encore une fois",
  sign: "Signer",
  publishTitle: "Mettre en vigueur",
  publishIntro:
    "Ce qui est en vigueur va à chaque appareil relié dès qu’il a le réseau. Chaque appareil dit d’après quelle version il calcule.",
  publish: "Publier",
  publishAsk: (label, before) => `${label} entre en vigueur pour tous les appareils. ${before}`,
  replaces: (label) => `Cela prend la place de ${label}.`,
  replacesNone: "Jusqu’ici les appareils utilisent ce qui est venu avec le logiciel.",
  publishYes: "La publier",
  rollBack: "Revenir à cette version",
  rollBackAsk: (label, before) =>
    `${label} était en vigueur auparavant et le redevient pour tous les appareils. ${before} Les deux restent dans la liste de ce qui a été en vigueur.`,
  rollBackYes: "Y revenir",
  cannotPublish: "Il lui manque des signatures\u00a0: elle ne peut pas être mise en vigueur.",
  mayNotPublish: "C’est un relecteur ou un administrateur qui met des versions en vigueur.",
  isInForce: "Cette version est en vigueur.",
  history: "Ce qui a été en vigueur",
  publication: ({ label, person, time }) => `${label}, depuis ${time}, par ${person}`,
  saveFile: "Enregistrer en fichier",
  calibrationIntro:
    "Un calibrage ajuste les poids aux enfants de ce lieu. Il s’apprend de cas pesés plus tard, se juge sur des enfants qu’il n’a pas vus, est signé par un relecteur puis mis en vigueur.",
  fitTitle: "Ajuster d’après des cas",
  calibrationName: "Nom du site",
  calibrationNameHint: "tel qu’il figure sur chaque résultat",
  fit: "Ajuster",
  fitted: (rows) => `Ajusté sur ${frenchCount(rows, "enfant", "enfants")}. Ce n’est pas encore gardé.`,
  leftOut: (reason, rows) => `${frenchCount(rows, "cas laissé", "cas laissés")} de côté\u00a0: ${reason}`,
  moreCases: "Il y a des cas plus anciens\u202f; seuls les derniers ont été pris.",
  tooFewToJudge:
    "Il y a trop peu d’enfants pour le juger sur d’autres qu’il n’a pas vus. Ne le publiez pas sur cette base.",
  accuracy: "Sur des enfants que le calibrage n’avait pas vus",
  measure: "Grandeur",
  before: "Avant",
  after: "Après",
  meanError: "Erreur moyenne, estimation moins balance",
  rmspe: "Erreur quadratique moyenne",
  within10: "À moins de 10\u00a0% de la balance",
  within20: "À moins de 20\u00a0% de la balance",
  coverage: "Dans l’intervalle à 95\u00a0%",
  gain: ({ value, low, high }) =>
    `À moins de 10\u00a0%\u00a0: changement ${value}, intervalle à 95\u00a0% de ${low} à ${high}.`,
  noGain:
    "L’intervalle ne montre pas de gain\u00a0: ce calibrage n’aide peut-être pas. Un relecteur doit en juger.",
  shift: (percent) => `Le décalage lui-même est connu à environ ${percent}.`,
  forOnePercent: (n) => `Pour le connaître à 1\u00a0%, il faudrait ${frenchCount(n, "enfant", "enfants")}.`,
  store: "Garder comme ébauche à signer",
  stored: "C’est gardé. Un relecteur peut signer.",
  looks: "À regarder avant de signer\u00a0:",
};
