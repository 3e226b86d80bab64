/** Where the name of an axis stands: in the middle, clear of the tick labels, without an arrow. */
export const below = { labelAnchor: "center", labelArrow: "none", labelOffset: 36 } as const;
export const beside = { labelAnchor: "center", labelArrow: "none", labelOffset: 46 } as const;
