import type { Screen } from "../frame/screen-props.ts";
import type { LaterScreenId } from "../state/screens.ts";

type Load = () => Promise<{ readonly Screen: Screen }>;

/** One for each screen behind Bedside. */
const parts: Readonly<Record<LaterScreenId, Load>> = {
  reader: () => import("../screens/reader/reader.tsx"),
  casebook: () => import("../screens/casebook/casebook.tsx"),
  practice: () => import("../screens/practice/practice.tsx"),
  study: () => import("../screens/study/study.tsx"),
  paper: () => import("../screens/paper/paper.tsx"),
  site: () => import("../screens/site/site.tsx"),
};

/** Asks for the part of the page that holds a screen. */
export function loadScreen(screen: LaterScreenId): Promise<Screen> {
  const load: Load = parts[screen];
  return load().then(({ Screen }) => Screen);
}
