import { routeOf } from "../state/screens.ts";
import type { Effects } from "./effects.ts";

/** Tells where the address leads, now and whenever that changes. */
export const watchRoute: Effects["watchRoute"] = (tell) => {
  const look = (): void => tell(routeOf(location.hash));
  addEventListener("hashchange", look);
  look();
};

/** The window's title, and the focus at the start of what is new: a screen reader reads on from there. */
export const showScreen: Effects["showScreen"] = ({ title, mainId }) => {
  document.title = title;
  const main = document.getElementById(mainId);
  if (main === null) return;
  scrollTo({ top: 0, behavior: "instant" });
  main.focus({ preventScroll: true });
};
