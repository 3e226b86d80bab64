import type { Effects } from "./effects.ts";

export const watchPrinting: Effects["watchPrinting"] = (tell) => {
  matchMedia("print").addEventListener("change", ({ matches }) => tell(matches));
  // The media change comes too late for some browsers' print; this event comes before they look at the page.
  addEventListener("beforeprint", () => tell(true));
  addEventListener("afterprint", () => tell(false));
};
