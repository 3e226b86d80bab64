import preact from "@preact/preset-vite";
import { defineConfig } from "vite";
import { VitePWA } from "vite-plugin-pwa";
import { firstScreenBudget } from "./build/first-screen-budget.ts";
import { isOfFirstScreen } from "./build/first-screen-part.ts";
import { fold } from "./build/fold.ts";
import { noPreload } from "./build/no-preload.ts";
import { preloadTypeface } from "./build/preload-typeface.ts";
import { prerender } from "./build/prerender.ts";

export default defineConfig({
  root: import.meta.dirname,
  build: {
    target: "es2023",
    // One style sheet for all screens, and no script that would fetch parts of it: the first screen's script is short of room.
    modulePreload: false,
    cssCodeSplit: false,
    rolldownOptions: {
      output: {
        codeSplitting: {
          groups: [{ name: "model", test: isOfFirstScreen, includeDependenciesRecursively: false }],
        },
      },
    },
    assetsInlineLimit: 0,
    // The formulary's own part is large on purpose: the budgets below watch what matters, in gzip.
    chunkSizeWarningLimit: 2000,
  },
  // Papers and studies are worked out in module workers that share their parts.
  worker: { format: "es" },
  plugins: [
    preact({ devToolsEnabled: false }),
    fold({ path: "src/state/formulary-index.ts", names: ["formularyIndex"] }),
    noPreload(),
    prerender(),
    preloadTypeface(),
    firstScreenBudget({ limitKb: 60, shellLimitKb: 400, chartLimitKb: 750 }),
    VitePWA({
      // A waiting version takes over on the next start; it never replaces the page in the middle of a case.
      registerType: "prompt",
      injectRegister: false,
      workbox: {
        globPatterns: ["**/*.{html,js,css,woff2,woff,svg,png,webmanifest}"],
        cleanupOutdatedCaches: true,
        navigateFallback: "index.html",
        // The page of the department is another one, and it needs its server.
        navigateFallbackDenylist: [/^\/department/, /^\/api\//],
        inlineWorkboxRuntime: true,
      },
      manifest: {
        name: "Steelyard Bedside",
        short_name: "Steelyard",
        description:
          "A child's weight and doses from length and arm circumference. Draft formulary, for training.",
        lang: "en",
        start_url: "/",
        scope: "/",
        display: "standalone",
        background_color: "#f5f6f4",
        theme_color: "#f5f6f4",
        icons: [
          { src: "icon.svg", sizes: "any", type: "image/svg+xml" },
          { src: "icon-192.png", sizes: "192x192", type: "image/png" },
          { src: "icon-512.png", sizes: "512x512", type: "image/png" },
          { src: "icon-maskable-512.png", sizes: "512x512", type: "image/png", purpose: "maskable" },
        ],
      },
    }),
  ],
});
