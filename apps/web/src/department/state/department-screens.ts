import type { PersonRole } from "@steelyard/records/department";

/** The screens of a department in the order of the menu, each with those who may go there. */
const departmentScreens = {
  cases: ["clinician"],
  accuracy: ["clinician", "reviewer", "researcher"],
  formulary: ["clinician", "reviewer", "administrator"],
  calibration: ["clinician", "reviewer", "administrator"],
  export: ["researcher"],
  people: ["administrator"],
  devices: ["administrator"],
  audit: ["administrator"],
  account: ["clinician", "reviewer", "researcher", "administrator"],
} as const satisfies Readonly<Record<string, readonly PersonRole[]>>;
export type DepartmentScreenId = keyof typeof departmentScreens;

const ids = Object.keys(departmentScreens) as readonly DepartmentScreenId[];

/** Where the reader is: a screen, and what follows its name in the address. Without a screen: the first one there is. */
export interface Route {
  /** `join` is for those who have an invitation and no login yet. */
  readonly screen: DepartmentScreenId | "join" | undefined;
  readonly path: readonly string[];
}

export const firstRoute: Route = { screen: undefined, path: [] };

export function mayGo(screen: DepartmentScreenId, roles: readonly PersonRole[]): boolean {
  return roles.some((role) => (departmentScreens[screen] as readonly PersonRole[]).includes(role));
}

/** The screens of somebody with these roles. */
export function screensFor(roles: readonly PersonRole[]): readonly DepartmentScreenId[] {
  return ids.filter((id) => mayGo(id, roles));
}

/** "#/cases/7" is 7 of the cases; anything unknown is the first screen. */
export function routeOf(hash: string): Route {
  const [name, ...path] = hash
    .replace(/^#?\/?/, "")
    .split("/")
    .filter((part) => part !== "");
  if (name === "join") return { screen: "join", path };
  const screen = ids.find((id) => id === name);
  return screen === undefined ? firstRoute : { screen, path };
}

/** The address of a place within the page. */
export function hashOf(screen: DepartmentScreenId | "join", ...path: readonly string[]): string {
  return ["#", screen, ...path].join("/");
}
