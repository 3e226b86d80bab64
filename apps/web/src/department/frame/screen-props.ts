import type { Person } from "../state/department-state.ts";

/** What every screen is given. */
export interface ScreenProps {
  /** What follows the screen's name in the address. */
  readonly path: readonly string[];
  readonly person: Person;
}
