import type { Effects } from "./effects.ts";

/** A tab may stay open over midnight: the day is looked at again whenever somebody comes back to it. */
export const watchDay: Effects["watchDay"] = (tell) => {
  const look = (): void => {
    const now = new Date();
    // The day here, not in Greenwich.
    tell(new Date(now.getTime() - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 10));
  };
  look();
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "visible") look();
  });
};
