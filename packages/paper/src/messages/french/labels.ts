import type { LabelsMessages } from "../labels-messages.ts";

export const FRENCH_LABELS: LabelsMessages = {
  title: "Étiquettes de seringues",
  subtitle:
    "Imprimer d’abord cette page sur papier ordinaire et mesurer ses règles\u202f; les étiquettes suivent",
  how: "Tenir la page suivante, imprimée sur papier ordinaire, contre une planche d’étiquettes devant une lumière\u00a0: chaque étiquette doit être à sa place. Puis l’imprimer sur les étiquettes à 100\u00a0%. Ne coller une étiquette qu’après contrôle du contenu par une seconde personne\u202f; jeter le reste au départ de l’enfant.",
  noLabels: "Aucune dose des problèmes choisis ne se prépare en seringue.",
  drawnUp: "préparé",
  by: "par",
  classes: {
    induction: "agent d’induction",
    benzodiazepine: "benzodiazépine",
    "benzodiazepine-antagonist": "antagoniste des benzodiazépines",
    relaxant: "curare",
    "relaxant-antagonist": "antagoniste des curares",
    opioid: "opioïde",
    "opioid-antagonist": "antagoniste des opioïdes",
    vasopressor: "vasopresseur",
    hypotensive: "hypotenseur",
    "local-anaesthetic": "anesthésique local",
    anticholinergic: "anticholinergique",
    antiemetic: "antiémétique",
  },
  weight: ({ kg, basis }) => `pour ${kg} (${basis})`,
};
