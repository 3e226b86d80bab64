import type { Later } from "../later/later.ts";

/** Asks for everything behind the first screen, once. */
export function loadLater(): Promise<Later> {
  return import("../later/later.ts").then(({ later }) => later);
}
