import type { Proportion } from "../analysis/index.ts";
import type { MethodConsequence } from "../findings/index.ts";
import type { Block, ReportTable } from "./block.ts";
import { findingsEn as words } from "./messages/findings.en.ts";

/** Lines printed a method; the CSV has all. */
const MOST_LINES = 12;

const percent = ({ share }: Proportion): string => words.round(100 * share, 1);
const withInterval = ({ share, low, high }: Proportion): string =>
  words.interval(words.round(100 * share, 1), words.round(100 * low, 1), words.round(100 * high, 1));

/** How often the errors of each method would have moved a dose outside its accepted range or changed a size. */
export function consequenceBlocks(
  methods: readonly MethodConsequence[],
  nameOf: (method: string) => string,
): Block[] {
  const first = methods[0]?.consequence;
  if (first === undefined) return [];
  const tables = [overview(methods, nameOf), ...doseTables(methods, nameOf), sizeTable(methods, nameOf)];
  return [
    { type: "heading", text: words.consequenceHeading, level: 2 },
    {
      type: "text",
      text: words.consequenceText({
        version: first.formularyVersion,
        signed: first.formularySigned,
        every: Math.max(...methods.map(({ every }) => every)),
      }),
    },
    ...tables.map((table): Block => ({ type: "table", table })),
  ];
}

function overview(methods: readonly MethodConsequence[], nameOf: (method: string) => string): ReportTable {
  const sums = methods.map(({ method, consequence: { children, anyOutside, doses, sizes } }) => {
    const sum = (pick: (own: (typeof doses)[number]) => number): number =>
      doses.reduce((all, own) => all + pick(own), 0);
    const changed = sizes.reduce((all, own) => all + own.changed.count, 0);
    return {
      method,
      children,
      anyOutside,
      doses: sum(({ outside }) => outside.n),
      outside: sum(({ outside }) => outside.count),
      above: sum(({ above }) => above.count),
      below: sum(({ below }) => below.count),
      sizes: sizes.reduce((all, own) => all + own.changed.n, 0),
      changed,
    };
  });
  const of = (count: number, all: number): string => (all === 0 ? "" : words.round((100 * count) / all, 1));
  return {
    name: "consequence",
    caption: words.consequenceCaption,
    head: words.consequenceHead,
    rows: sums.map((own) => [
      nameOf(own.method),
      words.round(own.children, 0),
      withInterval(own.anyOutside),
      of(own.outside, own.doses),
      of(own.above, own.doses),
      of(own.below, own.doses),
      of(own.changed, own.sizes),
    ]),
    data: {
      columns: [
        "method",
        "children",
        "children_outside",
        "low",
        "high",
        "doses",
        "doses_outside",
        "too_large",
        "too_small",
        "sizes",
        "sizes_changed",
      ],
      rows: sums.map((own) => [
        own.method,
        own.children,
        own.anyOutside.count,
        own.anyOutside.low,
        own.anyOutside.high,
        own.doses,
        own.outside,
        own.above,
        own.below,
        own.sizes,
        own.changed,
      ]),
    },
  };
}

function doseTables(
  methods: readonly MethodConsequence[],
  nameOf: (method: string) => string,
): ReportTable[] {
  return methods.flatMap(({ method, consequence: { doses } }, i): ReportTable[] => {
    const worst = doses
      .filter(({ outside }) => outside.count > 0)
      .sort((a, b) => b.outside.share - a.outside.share || (a.id < b.id ? -1 : 1));
    if (worst.length === 0) return [];
    const shown = worst.slice(0, MOST_LINES);
    return [
      {
        name: `consequence-doses-${i + 1}`,
        caption: words.dosesCaption(nameOf(method), shown.length),
        head: words.dosesHead,
        rows: shown.map(({ medicine, use, outside, above, below }) => [
          `${medicine}, ${use}`,
          words.round(outside.n, 0),
          withInterval(outside),
          percent(above),
          percent(below),
        ]),
        data: {
          columns: [
            "method",
            "line",
            "doses",
            "outside",
            "outside_low",
            "outside_high",
            "too_large",
            "too_small",
          ],
          rows: doses.map(({ id, outside, above, below }) => [
            method,
            id,
            outside.n,
            outside.count,
            outside.low,
            outside.high,
            above.count,
            below.count,
          ]),
        },
      },
    ];
  });
}

function sizeTable(methods: readonly MethodConsequence[], nameOf: (method: string) => string): ReportTable {
  const ids = [
    ...new Set(methods.flatMap(({ consequence }) => consequence.sizes.map(({ id }) => id))),
  ].sort();
  const find = (own: MethodConsequence, id: string): Proportion | undefined =>
    own.consequence.sizes.find((size) => size.id === id)?.changed;
  return {
    name: "consequence-sizes",
    caption: words.sizesCaption,
    head: [...words.sizesHead, ...methods.map(({ method }) => nameOf(method))],
    rows: ids.map((id) => [
      id.replaceAll("-", " "),
      ...methods.map((own) => {
        const changed = find(own, id);
        return changed === undefined ? "" : withInterval(changed);
      }),
    ]),
    data: {
      columns: ["method", "size", "children", "changed", "changed_low", "changed_high"],
      rows: methods.flatMap((own) =>
        own.consequence.sizes.map(({ id, changed }) => [
          own.method,
          id,
          changed.n,
          changed.count,
          changed.low,
          changed.high,
        ]),
      ),
    },
  };
}
