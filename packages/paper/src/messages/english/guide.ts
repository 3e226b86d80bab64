import type { GuideMessages } from "../guide-messages.ts";

export const ENGLISH_GUIDE: GuideMessages = {
  title: "Measuring guide",
  subtitle: "Length and arm first; every further measurement narrows the range",
  techniques: {
    "lying-two": {
      title: "Length, two people",
      text: "On the back, legs straight. One holds the head, eyes to the ceiling; the other presses the knees down, feet upright. Crown to heel, not to the toes.",
    },
    "lying-one": {
      title: "Length, alone",
      text: "Crown against something upright, tape from there. Press the knees down, feet upright, and read at the heel. Less exact: take it twice.",
    },
    "half-sitting": {
      title: "Length, half-sitting",
      text: "Tape along the back from the crown to the seat, then along the leg to the heel. Keep the legs straight. Say that it was half-sitting.",
    },
    seated: {
      title: "Length, seated",
      text: "Crown down the back to the seat, along the thigh to the knee, down to the heel. The least exact: lay the child down as soon as you can.",
    },
    "longer-than-tape": {
      title: "Longer than the tape",
      text: "Mark where the tape ends, move it there, and add both parts.",
    },
    arm: {
      title: "Arm",
      text: "Bare arm. Find the middle between the tip of the shoulder and the tip of the bent elbow, then let the arm hang. Tape round at the middle: snug, not denting the skin. In millimetres.",
    },
    waist: {
      title: "Waist",
      text: "Midway between the lowest rib and the top of the hip bone, on the skin. Tape level, at the end of an easy breath out.",
    },
    thigh: {
      title: "Thigh",
      text: "Midway between the fold of the groin and the top of the kneecap, square to the leg.",
    },
    calf: {
      title: "Calf",
      text: "Round the calf at its widest, muscle relaxed. Try a little higher and lower: the largest counts.",
    },
    head: {
      title: "Head",
      text: "Just above the brows, round the back where the head is largest. Tape firm, hair pressed flat.",
    },
    "knee-height": {
      title: "Knee height",
      text: "Where the legs will not straighten: knee and ankle bent square, from under the heel to the top of the thigh just above the kneecap.",
    },
    "forearm-bone": {
      title: "Forearm bone",
      text: "Where no length can be had: elbow bent, from the tip of the elbow to the bone at the wrist on the side of the little finger. Needs the age.",
    },
  },
};
