import type { Words } from "../../messages/words.ts";
import type { chartEn } from "./chart.en.ts";
import { frenchCount } from "./counted.ts";

export const chartFr: Words<typeof chartEn> = {
  intro:
    "Chaque cas pesé plus tard\u00a0: à quelle distance de la balance était l’estimation, dans l’ordre du temps. Les limites sont celles d’une carte de valeurs individuelles, tirées des cas eux-mêmes\u00a0: ce qui est en dehors, ou une longue suite d’un seul côté, n’est sans doute pas le seul hasard et mérite qu’on regarde rubans, balances et façon de mesurer.",
  none: "Aucun cas de ces jours n’a à la fois une estimation et un poids à la balance.",
  summary: ({ n, centre, within10 }) =>
    `${frenchCount(n, "cas", "cas")}\u00a0: erreur moyenne ${centre}, ${within10} à moins de 10\u00a0% de la balance.`,
  limits: (low, high) => `Limites de contrôle de ${low} à ${high}.`,
  fewLimits: (limit) => `Les limites de contrôle sont tracées à partir de ${limit} cas.`,
  noOrder:
    "Sans noms, les cas sont dans un ordre au hasard et sans dates\u00a0: il n’y a donc pas de limites de contrôle.",
  noSignal: "Aucun signal.",
  outside: (n) => `${frenchCount(n, "cas est", "cas sont")} hors des limites.`,
  longRun: (n) =>
    `${frenchCount(n, "cas appartient", "cas appartiennent")} à une longue suite d’un côté du centre.`,
  label: "Erreur de l’estimation en pour cent, cas après cas",
  axis: "Erreur en pour cent du poids à la balance",
  xAxis: "Cas, dans l’ordre du temps",
  centre: "moyenne",
  upper: "limite haute",
  lower: "limite basse",
  isOutside: "hors des limites",
  isRun: "longue suite",
  table: "Les cas de la carte",
  number: "Nº",
  day: "Début",
  code: "Cas",
  estimate: "Estimation",
  scale: "Balance",
  days: "Jours après",
  error: "Erreur",
  signal: "Signal relevé",
  earlier: "Il y a des cas plus anciens\u00a0: demandez-les par jours.",
  print: "Imprimer",
};
