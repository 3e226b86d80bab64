import type { StripMessages } from "../strip-messages.ts";

export const ENGLISH_STRIP: StripMessages = {
  title: "Length strip",
  idealLine: "ideal weight",
  armScale: "arm, mm",
  kilograms: (written) => `${written}\u00a0kg`,
  chartAlt: ({ fromCm, toCm }) => `Lines of equal total weight for lengths from ${fromCm} to ${toCm} cm by arm circumference`,
};
