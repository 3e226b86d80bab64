import type { ReadingTestMessages } from "../reading-test-messages.ts";

export const ENGLISH_READING_TEST: ReadingTestMessages = {
  title: "Reading test",
  subtitle: "Ten invented children: read their weights off the length strip",
  answersTitle: "Reading test, answers",
  answersSubtitle: "Keep this page apart until the test is done",
  how: "With the assembled length strip in front of you, find each length on the tape, go straight across to the arm, and write down the nearest line. Take the ideal weight from the margin.",
  child: ({ number }) => `Child ${number}`,
  length: ({ cm }) => `length ${cm} cm`,
  arm: ({ mm }) => `arm ${mm} mm`,
  total: "total weight, kg",
  ideal: "ideal weight, kg",
  reader: "Read by",
  date: "Date",
  columns: {
    child: "child",
    length: "length, cm",
    arm: "arm, mm",
    line: "nearest line, kg",
    right: "also right, kg",
    ideal: "ideal, kg",
    range: "95 % range, kg",
  },
  between: ", ",
  marking:
    "Right: the nearest line, or what is said to be right as well (within 4 % of the body model). Ideal weight: within 3 %. Whoever misses more than one of ten reads the strip again with somebody who does not (common practice, not a published pass mark).",
  childAlt: "A child lying on its back, with the tape round the middle of the upper arm",
};
