import type { Plugin, ResolvedConfig } from "vite";
import { importSource } from "./import-source.ts";

const place = "<!-- first screen -->";

/** Writes the empty first screen into index.html, so that there is a form to type in before the script has come. */
export function prerender(): Plugin {
  let config: ResolvedConfig;
  return {
    name: "steelyard:prerender",
    apply: "build",
    configResolved(resolved) {
      config = resolved;
    },
    transformIndexHtml: {
      order: "pre",
      async handler(html) {
        if (!html.includes(place)) throw new Error(`index.html has no ${place} to put the first screen in`);
        const { firstScreen } = await importSource<{ readonly firstScreen: () => string }>({
          root: config.root,
          path: "src/prerender.tsx",
        });
        return html.replace(place, () => firstScreen());
      },
    },
  };
}
