const plural = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;

/** Words of the Practice screen. */
export const practiceEn = {
  mark: "Practice. This child is invented; nothing here is kept or given.",
  intro:
    "Twenty invented children, each with a tape beside the body and one around the arm. Read both as you would at the bedside; you see at once how far off you were, what that does to the weight, and how long it took.",
  start: "Start with the first child",
  child: (n: number, of: number): string => `Child ${n} of ${of}`,
  postures: { lying: "lying", "half-sitting": "half sitting", seated: "seated" },
  ages: {
    m: "boy",
    f: "girl",
    months: (n: number): string => `${n} months`,
    years: (n: number): string => plural(n, "year", "years"),
  },
  crown: "Tape at the crown",
  crownAlt: "Drawing: a tape in centimetres, and where the crown of the head meets it. To be read by eye.",
  heel: "Tape at the heel",
  heelAlt: "Drawing: a tape in centimetres, and where the heel meets it. To be read by eye.",
  arm: "Tape around the arm",
  armAlt: "Drawing: a tape in millimetres around the arm, with its index. To be read by eye.",
  offset: "The tape does not begin at the crown.",
  length: "Length",
  armLabel: "Arm, mid-upper",
  check: "Check",
  unread: "Type a length in cm and an arm in mm.",
  result: "Your reading",
  yours: "read",
  drawn: "drawn",
  error: "error",
  weight: "Weight from both",
  time: (seconds: string): string => `${seconds} s from the drawing to the check.`,
  good: "As close as two careful readings by one person lie to each other.",
  off: {
    lengthCm: (limit: string): string =>
      `The length is further off than two careful readings differ (${limit} cm): look again where the tape begins and where the heel is.`,
    armMm: (limit: string): string =>
      `The arm is further off than two careful readings differ (${limit} mm): read at the index, tick by tick.`,
  },
  tens: "Ten off: the number before the tick was taken, or a start that is not zero.",
  next: "Next child",
  finish: "See how it went",
  again: "Once more from the first child",
  summary: (n: number): string => `${plural(n, "child", "children")} read`,
  median: "Median",
  largest: "Largest",
  within: (n: number, of: number): string => `${n} of ${of} with both readings within the limits.`,
  seconds: "time, s",
  noWeight: "no weight",
};
