import { type BedsideField, bedsideFields } from "../state/bedside-state.ts";
import type { Effects, Texts } from "./effects.ts";

const key = "steelyard.bedside";

/**
 * Texts survive a reload and a phone that drops the tab while the camera is open, and end with the tab: session
 * storage does just that. A browser that refuses storage loses only this comfort.
 */
export function keepTexts(texts: Texts): void {
  try {
    sessionStorage.setItem(key, JSON.stringify(texts));
  } catch {
    // Storage is refused or full; the page works without.
  }
}

export function keptTexts(): ReturnType<Effects["findTexts"]> {
  try {
    const kept: unknown = JSON.parse(sessionStorage.getItem(key) ?? "null");
    if (typeof kept !== "object" || kept === null) return undefined;
    const texts = pick((field) => (kept as Partial<Record<BedsideField, unknown>>)[field]);
    return Object.keys(texts).length === 0 ? undefined : { texts, carriedOver: true };
  } catch {
    return undefined;
  }
}

/** What a person has typed into the prerendered form before the script took over. */
export function typedAhead(): ReturnType<Effects["findTexts"]> {
  const texts = pick(
    (field) => document.querySelector<HTMLInputElement>(`input[type=text]#${field}, input#${field}`)?.value,
  );
  return Object.keys(texts).length === 0 ? undefined : { texts, carriedOver: false };
}

function pick(read: (field: BedsideField) => unknown): Partial<Texts> {
  const found = bedsideFields.map((field) => [field, read(field)] as const);
  return Object.fromEntries(found.filter(([, text]) => typeof text === "string" && text !== ""));
}
