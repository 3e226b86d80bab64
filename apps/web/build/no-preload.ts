import type { Plugin } from "vite";

/**
 * Leaves out the script that fetches the parts of a part ahead of it. There is nothing for it to fetch: the style is one file, and the
 * service worker has every part on the device already.
 */
export function noPreload(): Plugin {
  return {
    name: "steelyard:no-preload",
    apply: "build",
    enforce: "pre",
    load: (id) =>
      id.includes("vite/preload-helper") ? "export const __vitePreload = (load) => load();" : null,
  };
}
