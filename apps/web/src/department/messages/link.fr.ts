import type { Words } from "../../messages/words.ts";
import type { linkEn } from "./link.en.ts";

export const linkFr: Words<typeof linkEn> = {
  title: "Nom ou numéro à côté de ce cas",
  about:
    "Scellé et ouvert sur cette page, avec une phrase secrète que votre site garde pour lui. Le serveur n’a ni la phrase ni le nom et ne peut pas le lire. Une phrase perdue ne se retrouve pas\u00a0: les noms scellés avec elle restent fermés pour tous.",
  passphrase: "Phrase secrète du site",
  passphraseHint:
    "Pas votre mot de passe. Gardée dans cette page seule, jusqu’à la déconnexion, jusqu’à Oublier, ou jusqu’à cinq minutes sans toucher la page.",
  unlock: "Déverrouiller",
  forget: "Oublier la phrase",
  opening: "Ouverture.",
  wrong:
    "Cette phrase n’ouvre pas le nom de ce cas. Oubliez-la et essayez-en une autre\u202f; le nom reste tel quel.",
  none: "Rien n’est gardé à côté de ce cas.",
  field: "Nom ou numéro à côté de ce cas (scellé sur cette page)",
  fieldHint: "200 caractères au plus. Il n’est dans aucun export, aucune impression, aucun journal.",
  again: "La phrase encore une fois",
  againHint: "Elle n’a encore ouvert aucun nom ici. Mal tapée, elle fermerait celui-ci pour de bon.",
  differs: "Les deux phrases diffèrent. Oubliez la première si elle était mal tapée.",
  short: "12 caractères au moins\u00a0: qui a une copie de la base peut essayer des phrases.",
  missing: "Il faut remplir ceci.",
  seal: "Sceller et garder",
  replace: "Sceller et remplacer",
  kept: "Scellé et gardé.",
  remove: "Enlever le nom",
  removeAsk: "Le nom scellé de ce cas est supprimé sur le serveur pour tous.",
  removeYes: "Le supprimer",
  removed: "Le nom est supprimé.",
  noCrypto:
    "Ce navigateur ne peut ni sceller ni ouvrir de noms ici\u00a0: la page doit être chargée par HTTPS.",
};
