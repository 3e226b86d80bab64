import type { Technique } from "@steelyard/paper/drawings";

/** How a measurement is taken, in short words beside its drawing. */
export const techniqueEn = {
  title: (name: string): string => `How to measure: ${name}`,
  close: "Close",
  steps: {
    "lying-two": [
      "Child on the back, legs straight; tape on the bed beside the child.",
      "One holds the head, eyes to the ceiling. The other presses the knees down, feet upright.",
      "Crown to heel, not to the toes.",
    ],
    "lying-one": [
      "Crown against something upright, tape from there.",
      "Press the knees down, feet upright. Read at the heel, not at the toes.",
      "Alone it is less exact: the range widens by itself.",
    ],
    "half-sitting": [
      "Tape along the back, from the crown to the seat, then along the leg to the heel.",
      "Keep the legs straight; the tape follows the bend.",
    ],
    seated: [
      "Tape from the crown down the back to the seat, along the thigh to the knee, down to the heel.",
      "The least exact way: lay the child down as soon as you can.",
    ],
    "longer-than-tape": [
      "Longer than the tape: mark where it ends, move it there, and type both parts with a plus.",
      "Cannot be laid straight: measure a part of the body instead, under More.",
    ],
    arm: [
      "Bare arm. Find the middle between the tip of the shoulder and the tip of the bent elbow.",
      "Let the arm hang. Tape around at the middle: snug, not denting the skin.",
      "Read in millimetres.",
    ],
    waist: [
      "Midway between the lowest rib and the top of the hip bone, on the skin.",
      "Tape level all round, at the end of an easy breath out.",
    ],
    thigh: [
      "Midway between the fold of the groin and the top of the kneecap.",
      "Tape around at a right angle to the leg.",
    ],
    calf: [
      "Around the calf at its widest, muscle relaxed.",
      "Try a little higher and lower: the largest counts.",
    ],
    head: [
      "Just above the brows, around the back where the head is largest.",
      "Tape firm: hair pressed flat.",
    ],
    "knee-height": [
      "Knee and ankle bent to a right angle.",
      "From under the heel to the top of the thigh just above the kneecap.",
    ],
    "forearm-bone": [
      "Elbow bent, hand flat on the other shoulder or on the bed.",
      "From the tip of the elbow to the bone at the wrist on the side of the little finger.",
    ],
  } satisfies Record<Technique, readonly string[]>,
};
