import type { Plugin } from "vite";

/** Asks for the typeface with the page, so that the numbers do not change shape after the first paint. */
export function preloadTypeface(): Plugin {
  return {
    name: "steelyard:preload-typeface",
    apply: "build",
    transformIndexHtml: {
      order: "post",
      handler(_html, { bundle }) {
        const file = Object.keys(bundle ?? {}).find(
          (name) => /latin-wght-normal.*\.woff2$/.test(name) && !name.includes("latin-ext"),
        );
        if (file === undefined) throw new Error("the typeface is not in the bundle");
        return [
          {
            tag: "link",
            attrs: { rel: "preload", href: `/${file}`, as: "font", type: "font/woff2", crossorigin: true },
            injectTo: "head",
          },
        ];
      },
    },
  };
}
