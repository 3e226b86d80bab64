import { mainId } from "../frame/department-frame.tsx";
import { type Route, routeOf } from "../state/department-screens.ts";

/** What the page does to the window around it. */
export interface PageEffects {
  /** Tells where the address leads, at once and whenever that changes. */
  readonly watchRoute: (tell: (route: Route) => void) => void;
  /** Names the window and takes the reader to the start of another screen. */
  readonly showScreen: (title: string) => void;
  readonly go: (hash: string) => void;
}

export const pageEffects: PageEffects = {
  watchRoute: (tell) => {
    const look = (): void => tell(routeOf(location.hash));
    addEventListener("hashchange", look);
    look();
  },
  showScreen: (title) => {
    document.title = title;
    scrollTo({ top: 0, behavior: "instant" });
    document.getElementById(mainId)?.focus({ preventScroll: true });
  },
  go: (hash) => {
    location.hash = hash;
  },
};
