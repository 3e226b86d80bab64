/**
 * The screens there are, in the order of the menu. A further one needs its id here, its name in `messages.screens`
 * and its part of the page in `effects/load-screen.ts`.
 */
export const screenIds = ["bedside", "reader", "casebook", "practice", "study", "paper", "site"] as const;
export type ScreenId = (typeof screenIds)[number];

/** Screens that are loaded when somebody goes there; Bedside is there at once. */
export type LaterScreenId = Exclude<ScreenId, "bedside">;

/** Where the reader is: a screen, and what follows its name in the address. */
export interface Route {
  readonly screen: ScreenId;
  readonly path: string;
}

export const firstRoute: Route = { screen: "bedside", path: "" };

/** The place that the part of an address after # stands for: "#/casebook/7" is 7 in the casebook. Bedside for anything unknown. */
export function routeOf(hash: string): Route {
  const [name = "", ...rest] = hash.replace(/^#?\/?/, "").split("/");
  const screen = screenIds.find((id) => id === name);
  return screen === undefined ? firstRoute : { screen, path: rest.join("/") };
}

/** The address of a screen within the page. */
export function addressOf({ screen, path }: Route): string {
  return screen === "bedside" ? "#/" : `#/${screen}${path === "" ? "" : `/${path}`}`;
}
