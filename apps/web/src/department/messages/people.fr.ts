import type { Words } from "../../messages/words.ts";
import { frenchCount } from "./counted.ts";
import type { peopleEn } from "./people.en.ts";

export const peopleFr: Words<typeof peopleEn> = {
  intro:
    "Qui peut entrer, et à quel titre. Les cliniciens voient les cas et écrivent des formulaires\u202f; les relecteurs sont habilités et signent\u202f; les chercheurs voient des lignes sans noms\u202f; les administrateurs s’occupent des personnes, des appareils et du journal d’audit.",
  inviteTitle: "Inviter quelqu’un",
  fullName: "Nom",
  fullNameHint: "tel que les autres le verront",
  rolesLegend: "Rôles",
  noRole: "Choisissez au moins un rôle.",
  invite: "Faire une invitation",
  invited: (name) => `L’invitation de ${name}`,
  codeOnce:
    "Remettez ce code vous-même. Il est montré cette seule fois\u202f; il sert une fois, et le serveur ne le garde pas.",
  validUntil: (time) => `Valable jusqu’au ${time}.`,
  code: "Code d’invitation",
  where: (address) => `À saisir sous «\u202fJ’ai un code d’invitation\u202f» à l’adresse ${address}.`,
  listTitle: "Tout le monde",
  empty: "Personne n’est encore ici.",
  states: {
    invited: "invitation pas encore prise",
    active: "actif",
    locked: "bloqué après des mots de passe erronés",
    removed: "retiré",
  },
  noSignIn: "ne s’est jamais connecté",
  lastSignIn: (time) => `connexion le ${time}`,
  passkeys: (n) => (n === 0 ? "aucune clé d’accès" : frenchCount(n, "clé d’accès", "clés d’accès")),
  change: (name) => `Modifier ${name}`,
  close: "Fermer",
  saveRoles: "Garder les rôles",
  rolesKept: (name) => `Les rôles de ${name} sont changés.`,
  unlock: "Débloquer",
  unlocked: (name) => `${name} est débloqué.`,
  newCode: "Nouveau code d’invitation",
  removePerson: "Retirer",
  removeAsk: (name) =>
    `${name} ne pourra plus se connecter, et toutes ses sessions finissent. Ce que ${name} a écrit et signé reste.`,
  removeYes: "Retirer",
  removedNow: (name) => `${name} est retiré.`,
  bringBack: "Laisser entrer à nouveau",
  broughtBack: (name) => `${name} peut se connecter à nouveau.`,
  devicesIntro:
    "Un appareil envoie ses cas ici dès qu’il a un jeton. La page au chevet n’en a pas besoin pour montrer poids et doses.",
  deviceTitle: "Ajouter un appareil",
  deviceName: "Nom de l’appareil",
  deviceNameHint: "par exemple la tablette de la salle de déchocage",
  addDevice: "Ajouter l’appareil",
  tokenTitle: (name) => `Jeton de ${name}`,
  tokenOnce:
    "Montré cette seule fois. Sur l’appareil\u00a0: Ce site, Service, «\u202fJeton de cet appareil\u202f». Ne photographiez rien\u00a0: qui l’a peut envoyer et lire des cas.",
  tokenCode: "Le jeton en code à lire par une caméra",
  hide: "Il est sur l’appareil\u202f; le cacher",
  noDevices: "Aucun appareil ne peut encore envoyer de cas.",
  devicesTitle: "Appareils",
  enrolled: (day) => `ajouté le ${day}`,
  revoked: (day) => `révoqué le ${day}`,
  revoke: (name) => `Révoquer ${name}`,
  revokeAsk: "L’appareil ne pourra plus envoyer ni chercher de cas. Les siens restent sur lui.",
  revokeYes: "Le révoquer",
  revokedNow: (name) => `${name} est révoqué.`,
};
