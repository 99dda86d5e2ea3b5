import { defineConfig } from "vitest/config";

// A slow or busy machine is no fault: tests assert what comes out, never how fast. Every core works: left to
// itself the runner keeps one free, which on two cores doubles the time.
const common = { testTimeout: 180_000, hookTimeout: 180_000 };

/** What runs programs or a browser, or replaces modules: each file by itself. */
const APART = ["test/cli/**/*.test.ts", "test/page/**/*.test.ts"];

export default defineConfig({
  test: {
    maxWorkers: "100%",
    projects: [
      // The engine is pure, so its tests may share the modules they load: reading them anew for each file takes
      // a quarter of the time.
      {
        test: { ...common, name: "engine", include: ["test/**/*.test.ts"], exclude: APART, isolate: false },
      },
      { test: { ...common, name: "programs", include: APART } },
    ],
  },
});
