import type { Effects } from "./effects.ts";

const key = "steelyard.pinned";

/** Kept for good: a short list is made once. A browser that refuses storage loses only this comfort. */
export const keepPins: Effects["keepPins"] = (pinned) => {
  try {
    if (pinned.length === 0) localStorage.removeItem(key);
    else localStorage.setItem(key, JSON.stringify(pinned));
  } catch {
    // Storage is refused or full; the sheet works without a short list.
  }
};

export const findPins: Effects["findPins"] = () => {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(key) ?? "[]");
    return Array.isArray(kept) ? kept.filter((line): line is string => typeof line === "string") : [];
  } catch {
    return [];
  }
};
