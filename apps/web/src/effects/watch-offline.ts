import type { Effects } from "./effects.ts";

/**
 * Registers the service worker that keeps the whole page on the device.
 *
 * A newer version is fetched in the background and waits: it takes over when the page is next opened, never in
 * the middle of a case.
 */
export const watchOffline: Effects["watchOffline"] = (tell) => {
  if (!import.meta.env.PROD || !("serviceWorker" in navigator)) return;
  const start = async (): Promise<void> => {
    const { Workbox } = await import("workbox-window");
    const worker = new Workbox("/sw.js");
    worker.addEventListener("waiting", () => tell("update-waits"));
    await worker.register();
    // Ready means that everything is on the device: the worker does not finish installing before that.
    const { waiting } = await navigator.serviceWorker.ready;
    tell(waiting ? "update-waits" : "ready");
  };
  start().catch(() => tell("unknown"));
};
