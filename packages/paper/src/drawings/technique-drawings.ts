import type { LineDrawing, Tube } from "./line-drawing.ts";

/** What can be shown of how a child is measured. */
export type Technique =
  | "lying-two"
  | "lying-one"
  | "half-sitting"
  | "seated"
  | "longer-than-tape"
  | "arm"
  | "waist"
  | "thigh"
  | "calf"
  | "head"
  | "knee-height"
  | "forearm-bone";

const tube = (d: string, widthMm: number): Tube => ({ d, widthMm });
/** A round head is a stroke of no length. */
const head = (x: number, y: number, widthMm = 16): Tube => tube(`M${x} ${y}h0.01`, widthMm);

const size = { widthMm: 120, heightMm: 76 } as const;
const bed = "M6 62h108M12 62v9M108 62v9";

/** A child on its back, from the side, crown at 14 mm and heel at 103 mm. */
const lyingChild: readonly (readonly Tube[])[] = [
  [head(22, 53), tube("M33 55L62 55.5", 13), tube("M62 56.5L97 57.5", 8.5), tube("M99.5 57.5L101 49", 5)],
  [tube("M37 54.5L50 58L61 57", 5)],
];
const lyingFace = "M20 49.5h2M24.5 44.9q1.6-1 2.6 0.4M27 48.6q1.6 0.6 0.8 2.4";
const lyingTape = "M14 67h89";
const lyingMarks = "M14 42v28M103 44v26";

/** How each measurement is taken, in our own drawing; the words stand beside it. */
export const techniqueDrawings: Readonly<Record<Technique, LineDrawing>> = {
  "lying-two": {
    ...size,
    bodies: [
      ...lyingChild,
      [tube("M6 18L13 33L17 42", 6.5), tube("M17 42L21 44.5", 4.5)],
      [tube("M113 18L103 31L84 50", 6.5), tube("M84 50L79 52", 4.5)],
    ],
    lines: `${bed}${lyingFace}`,
    tape: lyingTape,
    marks: lyingMarks,
  },
  "lying-one": {
    ...size,
    bodies: [...lyingChild, [tube("M113 18L103 31L84 50", 6.5), tube("M84 50L79 52", 4.5)]],
    lines: `${bed}${lyingFace}M13.2 26v36M10 29l3-3M10 36l3-3M10 43l3-3M10 50l3-3M10 57l3-3`,
    tape: lyingTape,
    marks: lyingMarks,
  },
  "half-sitting": {
    ...size,
    bodies: [
      [head(29, 20), tube("M35.5 28.5L59 52", 13), tube("M60 54L94 55.5", 8.5), tube("M97 55L99 46.5", 5)],
      [tube("M39 30.5L49 45L61 48", 5)],
    ],
    lines: "M7 19L51 64M51 64h60M14 26v46M106 64v8M32.4 15.3h2M36.2 17.6l2.4 3-2.6 0.6",
    tape: "M17.4 20.6L54 58.6H102",
    marks: "M24.4 13.4l-10.4 10.4M102 44v20",
  },
  seated: {
    ...size,
    bodies: [
      [head(48, 11), tube("M47 22L48.5 44", 13), tube("M50 45L76 45", 9.5), tube("M77 45L77.5 66", 8)],
      [tube("M78 69L85 69.5", 5), tube("M48.5 22L57 35L70 38", 5)],
    ],
    lines: "M34 12v38M34 51h46M38 51v22M74 52v21M52.4 10h2M56 12.4q1.4 0.8 0.6 2.4M30 73h66",
    tape: "M37.5 3.5V54H69.5V71.5",
    marks: "M34.5 3h14M66.5 71.5h12",
  },
  "longer-than-tape": {
    ...size,
    bodies: lyingChild,
    lines: `${bed}${lyingFace}`,
    tape: "M14 67h60M74 71h29",
    marks: "M14 42v28M103 44v30M74 40v34",
  },
  arm: {
    ...size,
    bodies: [
      [head(41, 6, 17), tube("M40 32L40 80", 34)],
      [tube("M57.5 27L59 55", 14), tube("M59 56L87 58", 10.5), tube("M89 58L96 58.5", 7)],
    ],
    lines: "M37.5 6h2M42.5 6h2M39 10q2 1.4 4 0",
    tape: "M51.4 42q7 3.6 14 0M51.3 39.5q7 3.6 14 0",
    marks: "M72 20.5h9M72 61.5h9M76.5 20.5v41M74 41h5",
  },
  waist: {
    ...size,
    bodies: [
      [head(60, 7, 14), tube("M60 23L60 54", 26), tube("M53 58L52 80", 11), tube("M67 58L68 80", 11)],
      [tube("M43.5 20L36 38L35 52", 6.5), tube("M76.5 20L84 38L85 52", 6.5)],
    ],
    lines: "M57 6h2M62 6h2M58 10q2 1.4 4 0M51 34q9 7 18 0",
    tape: "M47 44q13 4.6 26 0M47 41.5q13 4.6 26 0",
    marks: "M92 35h7M92 50h7M95.5 35v15M93.5 42.5h4",
  },
  thigh: {
    ...size,
    bodies: [[tube("M28 6L30 36", 24), tube("M32 42L80 42", 19), tube("M82 44L82 74", 13)]],
    lines: "M12 56h62M18 56v18M68 56v18",
    tape: "M54 32.6q4 9.4 0 18.8M57 32.6q4 9.4 0 18.8",
    marks: "M27 24v9M89 24v9M27 27h62M58 24.5v5",
  },
  calf: {
    ...size,
    bodies: [
      [tube("M8 12L54 12", 18), tube("M57 14L57 30", 15), tube("M57 28L57 62", 11), tube("M60 67L76 68", 7)],
    ],
    lines: "M4 25h42M10 25v48M40 25v48M46 73h44",
    tape: "M49.4 31q7.6 3.6 15.2 0M49.6 28.5q7.6 3.6 15.2 0",
    marks: "M70 30h12M78 26.5l4 3.5-4 3.5",
  },
  head: {
    ...size,
    bodies: [[tube("M60 60L58 76", 22), head(60, 36, 50)]],
    lines: "M77 38h4M84.5 39l2.6 5-3.4 0.6M76 51q4 2 7 0M57 37q-5-2-5 3.4t5 4",
    tape: "M35.4 31.5Q60 36 84 29M35.6 28.5Q60 33 83.2 26",
    marks: "M90 26.5h10M90 26.5l4-3.4M90 26.5l4 3.4",
  },
  "knee-height": {
    ...size,
    bodies: [
      [tube("M24 4L25 30", 22), tube("M27 33L72 33", 17), tube("M75 35L75 62", 12), tube("M77 67L90 68", 7)],
    ],
    lines: "M8 45h54M14 45v28M56 45v28M44 73h66",
    tape: "M97 24.5V71.5",
    marks: "M70 24.5h32M82 71.5h20",
  },
  "forearm-bone": {
    ...size,
    bodies: [[tube("M36 6L38 48", 17), tube("M40 50L84 50", 13), tube("M87 50L97 50", 8)]],
    lines: "M97 46.6l8 1M97 50h9M97 53.4l8-1",
    tape: "M30 64h53",
    marks: "M30 56v12M83 42v26",
  },
};
