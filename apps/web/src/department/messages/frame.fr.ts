import type { Words } from "../../messages/words.ts";
import { frenchNumber } from "./counted.ts";
import type { frameEn } from "./frame.en.ts";

export const frameFr: Words<typeof frameEn> = {
  name: "Service",
  windowTitle: (screen) => `Steelyard Service, ${screen}`,
  menu: "Menu",
  screens: {
    cases: "Cas",
    accuracy: "Exactitude",
    formulary: "Formulaire",
    calibration: "Calibrage",
    export: "Export pour une étude",
    people: "Personnes",
    devices: "Appareils",
    audit: "Journal d’audit",
    account: "Votre compte",
  },
  screenFor: {
    cases: "Cas de tous les appareils, poids ultérieurs",
    accuracy: "L’estimation face à la balance, dans le temps",
    formulary: "Modifier, comparer, signer, publier",
    calibration: "Ajuster aux enfants de ce lieu",
    export: "Des lignes sans noms",
    people: "Inviter, rôles, débloquer",
    devices: "Quels appareils envoient des cas",
    audit: "Qui a fait quoi, et si le journal est entier",
    account: "Mot de passe, clés d’accès, sessions",
  },
  roles: {
    clinician: "clinicien",
    reviewer: "relecteur",
    researcher: "chercheur",
    administrator: "administrateur",
  },
  signedIn: ({ person, roles, siteName }) => `${person} (${roles}), lieu ${siteName}`,
  signOut: "Se déconnecter",
  toBedside: "Au chevet, la page pour un enfant, fonctionne sans compte",
  asking: "Le serveur est interrogé.",
  loading: "Chargement.",
  again: "Demander à nouveau",
  no: "Laisser tel quel",
  more: (count) => `et ${frenchNumber(count)} de plus`,
  notAllowed: "Vos rôles ne comprennent pas cet écran. Un administrateur peut les changer.",
  problems: {
    unreachable: "Le serveur ne répond pas. Rien n’a été changé\u202f; ce que vous avez saisi est encore là.",
    "no-records":
      "Ce serveur ne garde pas de dossiers\u00a0: il ne sert que la page au chevet. Qui le gère peut les activer (docs/operations.md).",
    "update-needed": "La page et le serveur sont de versions différentes. Rechargez la page.",
  },
  refusals: {
    "signed-out": "Votre session est terminée. Reconnectez-vous\u202f; ce que vous avez saisi est encore là.",
    "not-allowed": "Vos rôles ne le permettent pas.",
    "wrong-credentials":
      "L’identifiant et le mot de passe ne vont pas ensemble, ou la clé d’accès n’est pas connue ici.",
    "wrong-password": "Ce n’est pas votre mot de passe.",
    "wrong-code": "Ce code n’est pas valable\u00a0: mal saisi, déjà utilisé ou trop ancien.",
    "set-up-already": "Ce service a déjà été mis en place. Demandez une invitation à un administrateur.",
    "login-taken": "Quelqu’un a déjà cet identifiant. Choisissez-en un autre.",
    "too-short": "Ce mot de passe est trop court. Trois ou quatre mots conviennent.",
    "too-long": "Ce mot de passe est trop long.",
    "names-you":
      "Votre nom ou votre identifiant est dans ce mot de passe. C’est ce que d’autres essaieraient d’abord.",
    "too-common":
      "Ce mot de passe est parmi les premiers que d’autres essaieraient. Trois ou quatre mots conviennent.",
    locked:
      "Trop de mots de passe erronés\u00a0: cet identifiant est bloqué pour un temps. Un administrateur peut le débloquer.",
    "last-administrator": "Il faut un administrateur\u00a0: c’est le dernier.",
    "signed-already": "Vous avez déjà signé cette version.",
    "own-work":
      "Cette version contient des médicaments à haut risque et vous l’avez écrite\u00a0: d’autres doivent la signer.",
    "needs-signatures":
      "Il manque des signatures à cette version\u00a0: elle ne peut pas encore être publiée.",
    "faulty-document": "Ceci n’a pas été pris, à cause de ces défauts\u00a0:",
    "too-few-children": "Il y a trop peu d’enfants pesés en ces jours pour ajuster un calibrage.",
    "incoherent-rows": "Les mesures de ces enfants se contredisent trop pour ajuster quoi que ce soit.",
    "unknown-case": "Ce cas n’est plus ici\u00a0: il a peut-être été supprimé selon les règles.",
    "case-purged": "Le service a supprimé ce cas selon ses règles.",
    "id-taken": "Le serveur a une autre entrée sous le même numéro. Rechargez la page.",
    "sign-in-again":
      "Pour cela, il faut s’être connecté dans les dix dernières minutes. Déconnectez-vous et reconnectez-vous.",
    "no-passkeys-here":
      "Les clés d’accès demandent un serveur qui a un nom\u00a0: qui le gère règle publicUrl (docs/operations.md).",
    "faulty-passkey": "Le serveur n’a pas pu vérifier cette clé d’accès. Rien n’a été ajouté.",
    "known-passkey": "Cette clé d’accès est déjà là.",
    "too-many-passkeys":
      "Vous avez autant de clés d’accès qu’une personne peut en avoir. Retirez-en une d’abord.",
    "unknown-passkey": "Cette clé d’accès n’est plus ici.",
    "not-from-the-department": "Ceci ne se change que sur l’appareil du chevet.",
    "whole-years-only":
      "Sans noms, seules des années civiles entières sont données\u00a0: du 1er janvier au 31 décembre, ou sans borne. Une période plus courte daterait chaque enfant.",
    "unknown-document": "Cette version n’existe pas ici.",
    "unknown-person": "Cette personne n’existe pas ici.",
    "unknown-session": "Cette session est déjà terminée.",
    "unknown-device": "Cet appareil n’existe pas ici.",
    "wrong-csrf": "Cette page a perdu la preuve de sa session. Rechargez-la.",
    "wrong-origin": "La page n’a pas été chargée depuis ce serveur. Rechargez-la de là.",
    "too-many": "Trop de demandes à l’instant. Attendez une minute et réessayez.",
    "too-large": "C’est plus grand que ce que le serveur accepte.",
    "store-full": "Le disque du serveur est plein. Rien n’a été gardé\u202f; prévenez qui le gère.",
    "store-read-only":
      "On ne peut pas écrire sur le disque du serveur. Rien n’a été gardé\u202f; prévenez qui le gère.",
    "store-trouble":
      "Le serveur ne peut rien garder pour l’instant. Rien n’a été changé\u202f; réessayez dans un moment.",
    "server-fault": "Le serveur a fait une erreur. Qui le gère la trouve dans son journal.",
  },
  lockedUntil: (time) =>
    `Trop de mots de passe erronés\u00a0: cet identifiant est bloqué jusqu’au ${time}. Un administrateur peut le débloquer plus tôt.`,
  refusedBecause: (reason) => `Le serveur a refusé ceci\u00a0: ${reason}.`,
  unsigned: "Ébauche non signée, pour un relecteur habilité",
  from: "Du jour",
  to: "Au jour",
  show: "Afficher",
  orderOfDays: "Le premier jour est après le dernier.",
};
