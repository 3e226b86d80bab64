import preact from "@preact/preset-vite";
import { defineConfig } from "vite";

/**
 * The page of the department, into the same folder as Bedside and after it: a build of its own, so that nothing of it is in the parts,
 * the budget or the offline store of the page that a resuscitation waits for. It needs its server, so it works online only.
 */
export default defineConfig({
  root: import.meta.dirname,
  // The icons are there already.
  publicDir: false,
  build: {
    target: "es2023",
    emptyOutDir: false,
    modulePreload: false,
    cssCodeSplit: false,
    assetsInlineLimit: 0,
    // The whole formulary and the body model are in it.
    chunkSizeWarningLimit: 2000,
    rolldownOptions: { input: "department.html" },
  },
  plugins: [preact({ devToolsEnabled: false })],
});
