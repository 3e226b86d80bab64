import type { StripMessages } from "../strip-messages.ts";

export const ENGLISH_STRIP: StripMessages = {
  title: "Length strip",
  subtitle: "A child's weight from the lying length and the arm",
  idealLine: "ideal weight",
  armScale: "arm, mm",
  kilograms: (written) => `${written}\u00a0kg`,
  chartAlt: ({ fromCm, toCm }) =>
    `Lines of equal total weight for lengths from ${fromCm} to ${toCm} cm by arm circumference`,
  marginLength: "cm",
  marginIdeal: "ideal kg",
  marginRange: "95 % range",
  range: ({ below, above }) => `−${below} +${above}\u00a0%`,
  headLine: "HEAD LINE: the crown of the head touches this edge",
  headEnd: "head end",
  footEnd: "FOOT END",
  section: ({ page, pages, fromCm, toCm }) => `Page ${page} of ${pages}: ${fromCm} to ${toCm} cm`,
  cutAndJoin: ({ atCm, page }) =>
    `Cut off this band along the line under it. Lay the edge on the line at ${atCm} cm of page ${page}, crosses on crosses, and glue.`,
  glueNext: ({ page }) => `Page ${page} is glued over this end, from the line with the crosses down.`,
  stepsTitle: "How to read it",
  steps: [
    "Lay the child flat on the back beside the strip, crown of the head on the head line, face straight up. One person holds the head, one the knees.",
    "Straighten the legs, foot square to the tape. Where the heel meets the tape is the length.",
    "Measure the bare, relaxed arm halfway between the tips of shoulder and elbow, in mm, the tape snug and not tight.",
    "From the heel go straight across to the arm. The nearest line is the total weight. The margin has the ideal weight and the range.",
  ],
  childAlt:
    "A child lying on its back beside the strip, crown on the head line, heel on the tape, a tape round the middle of the upper arm",
  postureTitle: "Posture",
  postures: [
    "Standing height only: add 0.7 cm.",
    "Half-sitting or seated: the length is less sure (SD 2 to 3 cm), and the range is wider than the margin says. Say how it was taken.",
    "One person alone: the length is less sure (SD 1.5 cm). Take it twice.",
  ],
  notForTitle: "Not for",
  notFor:
    "shorter than 45 cm, newborns who can be weighed, adults; an arm with oedema, a cast, burns or a drip that has run into it. It is an estimate: never write it down as a measured weight.",
  assemblyTitle: "Put it together",
  assembly: ({ pages, firstJoinCm }) =>
    `Print ${pages} pages at 100 % and measure both rulers on each. Keep page 1 whole. From page 2 on cut off the top band, lay the cut edge on the line at the foot of the page before (the first is at ${firstJoinCm} cm), crosses on crosses, and glue. Check the whole with a tape: 0 to 200 cm, within 2 mm.`,
  assemblyAlt: "Pages laid over one another from head to foot, each over the glue band of the page before",
  legendTitle: "On the chart",
  legend: {
    contour: "Total weight. Every line has its kg; the nearest line is within 2 % of the body model.",
    arm: "Arm circumference in mm, from scale to scale.",
    ideal: "Ideal weight: the median of healthy children of that length.",
    beyond:
      "Beyond what the body model has seen (arms of 2 in 1,000; under 50 cm): do not rely on it, weigh.",
    margin:
      "The margin: length, ideal weight, and how far below and above the estimate 95 of 100 children lie near the ideal line; wider towards the edges.",
  },
  example: ({ lengthCm, armMm, lineKg, low, high, idealKg }) =>
    `Example: heel at ${lengthCm} cm, arm ${armMm} mm. The nearest line says ${lineKg} kg; 95 of 100 such children weigh ${low} to ${high} kg; the ideal weight is ${idealKg} kg.`,
};
