import type { Colour } from "./item.ts";

/** Greys that a black-and-white printer keeps apart; meaning is never carried by a hue alone. */
export const ink: Colour = "#000000";
export const soft: Colour = "#4a4a4a";
export const faint: Colour = "#8c8c8c";
export const hairline: Colour = "#bdbdbd";
export const tint: Colour = "#ececec";
export const shade: Colour = "#d2d2d2";
export const paperWhite: Colour = "#ffffff";
export const watermark: Colour = "#eaeaea";
