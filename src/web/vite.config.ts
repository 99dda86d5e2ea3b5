import { fileURLToPath } from "node:url";
import { defineConfig } from "vite";
import { listFiles } from "./build/listFiles.ts";

const at = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** The service worker's name is fixed: a browser asks for it again by that name. */
const SERVICE_WORKER = "sw";

// "worker" among the conditions: a Markdown library has a form for browsers that asks for `document`, which
// the engine's worker lacks. Every path is relative, so that the built folder works under any address.
export default defineConfig({
  root: at("."),
  base: "./",
  publicDir: at("public"),
  resolve: { conditions: ["worker", "module", "browser", "production"] },
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
  worker: { format: "es" },
  build: {
    outDir: at("../../dist/page"),
    emptyOutDir: true,
    target: "es2022",
    modulePreload: { polyfill: false },
    // Nothing as data: the policy allows no fonts or scripts of that kind.
    assetsInlineLimit: 0,
    // The engine is one file of about 2 MB before compression; that is known and measured by a test.
    chunkSizeWarningLimit: 3000,
    rolldownOptions: {
      input: { page: at("index.html"), [SERVICE_WORKER]: at("offline/serviceWorker.ts") },
      output: {
        entryFileNames: ({ name }) => (name === SERVICE_WORKER ? "[name].js" : "assets/[name]-[hash].js"),
      },
    },
  },
  plugins: [listFiles(`${SERVICE_WORKER}.js`)],
});
