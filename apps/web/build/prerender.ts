import { join } from "node:path";
import { type Plugin, type ResolvedConfig, runnerImport } from "vite";

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
        const { module } = await runnerImport<{ readonly firstScreen: () => string }>(
          join(config.root, "src/prerender.tsx"),
          {
            root: config.root,
            configFile: false,
            logLevel: "error",
            resolve: { alias: config.resolve.alias },
            oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
          },
        );
        return html.replace(place, () => module.firstScreen());
      },
    },
  };
}
