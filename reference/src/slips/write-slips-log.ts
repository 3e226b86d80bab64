import type { CleanRow, Known } from "./clean-row.ts";
import type { JudgedSlip } from "./judge-slips.ts";
import { falseAlarms, judgeAll, percent, simulateSlips } from "./measure-slips.ts";
import { countedWays, otherWays, type SlipWay } from "./slip-kinds.ts";

const perKind = 200;
const thresholds = [0.05, 0.1, 0.2, 0.5, 0.9] as const;

/** The log of the simulation, as Markdown. */
export function writeSlipsLog(rows: readonly CleanRow[]): string {
  const tuned = rows.filter(({ half }) => half === "tuned");
  const judged = rows.filter(({ half }) => half === "judged");
  const counted = simulateSlips({ rows: judged, ways: countedWays, perKind });
  const all = judgeAll(counted, { known: "everything" });
  const least = judgeAll(counted, { known: "length and arm" });
  const others = simulateSlips({ rows: judged, ways: otherWays, perKind: 3 * perKind });
  const othersAll = judgeAll(others, { known: "everything" });
  const othersLeast = judgeAll(others, { known: "length and arm" });
  return `# Slips recognised

Written by \`npm run slips -w reference\`; do not edit. \`recogniseSlips\` of \`@steelyard/core/body\` on slips made by a seeded generator
in real rows, and on the same kind of rows left as they are. Rows: NHANES children the model was fitted to (${count(rows, "NHANES")}), and
the two cleanest open surveys, which it was not fitted to
(${surveyCounts(rows)}), as published, children with oedema aside. Every other row of each
source chose the threshold; the others judge. A source gives as many slips of a kind as any other that has the measurement.

**${all.length} slips of ten kinds: ${share(all, "right")} % recognised** with everything in the row known, ${share(least, "right")} % with length, arm and the field of the
slip alone. Recognised: something was said, and what was proposed first puts the numbers right, within the digits that were lost in writing.

## Ten kinds

| kind | slips | said, % | recognised, % | with length and arm alone: said, % | recognised, % |
| --- | ---: | ---: | ---: | ---: | ---: |
${slipTable(countedWays, "kind", all, least)}

The ten are the kinds that change a number by a known factor or into another field: units of each measurement, the decimal point, fields
exchanged. They count because each has one correction that can be proposed. Each is made of these ways, in equal parts:

| way | slips | said, % | recognised, % | with length and arm alone: said, % | recognised, % |
| --- | ---: | ---: | ---: | ---: | ---: |
${slipTable(countedWays, "way", all, least)}

These slips change a number by a factor of 2 and more, and few children have such a twin. What is missed does make another child: pounds or
inches of a very large child, a toddler's age of 1 or 2 years taken for months, and length and arm of a very thin child, whose
centimetres and millimetres are nearly the same number.

## False alarms

Rows left as they are. Every alarm counts, although some of these rows hold real slips of their examiners or typists.

| rows | known | rows | alarms | % | of these with a correction |
| --- | --- | ---: | ---: | ---: | ---: |
${alarmTable(judged)}

## Slips that often cannot be told

Two digits exchanged, or one digit misread, mostly leave a child that could be: 163 for 136 cm is a slip only beside a weight or an age. They
do not count above. Exchanged digits are proposed where the other measurements reach so far; a misread digit has nine
corrections and gets none, only the doubt.

| way | slips | said, % | recognised, % | with length and arm alone: said, % | recognised, % |
| --- | ---: | ---: | ---: | ---: | ---: |
${slipTable(otherWays, "way", othersAll, othersLeast)}

Each slip is tried on its own, and a tape in inches with all that was read off it: of two other slips at once something is said, but the
corrections come one after the other or not at all. Nothing can be told of a standing height taken for a lying length, or of another child's measurement of the same size.

## The threshold

On the rows that tune: the probability that something is wrong from which it is said. Chosen: 0.2, the highest of these at which
more than 99 in 100 slips are recognised either way, with alarms in fewer than 1 in 100 clean rows of every source.

| said from | recognised, % | with length and arm alone, % | ${sourcesOf(rows)
    .map((source) => `false alarms ${source}, %`)
    .join(" | ")} |
| ---: | ---: | ---: |${" ---: |".repeat(sourcesOf(rows).length)}
${thresholdTable(tuned)}
`;
}

function slipTable(
  ways: readonly SlipWay[],
  by: "kind" | "way",
  all: readonly JudgedSlip[],
  least: readonly JudgedSlip[],
): string {
  const names = [...new Set(ways.map((way) => way[by]))];
  const line = (name: string, own: (slip: JudgedSlip) => boolean): string => {
    const [known, barely] = [all.filter(own), least.filter(own)];
    const cells = [known, barely].flatMap((slips) => [share(slips, "flagged"), share(slips, "right")]);
    return `| ${[name, known.length, ...cells].join(" | ")} |`;
  };
  const lines = names.map((name) => line(name, ({ way }) => way[by] === name));
  return [...lines, ...(by === "kind" ? [line("**all**", () => true)] : [])].join("\n");
}

function alarmTable(rows: readonly CleanRow[]): string {
  const knowns: readonly Known[] = ["everything", "everything but the weight", "length and arm"];
  return sourcesOf(rows)
    .flatMap((source) =>
      knowns.map((known) => {
        const own = rows.filter((row) => row.source === source);
        const { alarms, corrections } = falseAlarms(own, { known });
        return `| ${[source, known, own.length, alarms, percent(alarms, own.length).toFixed(2), corrections].join(" | ")} |`;
      }),
    )
    .join("\n");
}

function thresholdTable(rows: readonly CleanRow[]): string {
  const slips = simulateSlips({ rows, ways: countedWays, perKind });
  return thresholds
    .map((alarmAt) => {
      const recognised = (["everything", "length and arm"] as const).map((known) =>
        share(judgeAll(slips, { known, alarmAt }), "right"),
      );
      const alarms = sourcesOf(rows).map((source) => {
        const own = rows.filter((row) => row.source === source);
        return percent(falseAlarms(own, { known: "everything", alarmAt }).alarms, own.length).toFixed(2);
      });
      return `| ${[alarmAt, ...recognised, ...alarms].join(" | ")} |`;
    })
    .join("\n");
}

function share(slips: readonly JudgedSlip[], what: "flagged" | "right"): string {
  return percent(slips.filter((slip) => slip[what]).length, slips.length).toFixed(1);
}

function sourcesOf(rows: readonly CleanRow[]): readonly string[] {
  return [...new Set(rows.map(({ source }) => source))];
}

function count(rows: readonly CleanRow[], source: string): number {
  return rows.filter((row) => row.source === source).length;
}

function surveyCounts(rows: readonly CleanRow[]): string {
  return sourcesOf(rows)
    .filter((source) => source !== "NHANES")
    .map((source) => `${source} ${count(rows, source)}`)
    .join(", ");
}
