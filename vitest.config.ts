import { defineConfig } from "vitest/config";

// A slow or busy machine is no fault: tests assert what comes out, never how fast. Every core works: left to
// itself the runner keeps one free, which on two cores doubles the time.
export default defineConfig({
  test: {
    include: ["test/**/*.test.ts"],
    testTimeout: 180_000,
    hookTimeout: 180_000,
    maxWorkers: "100%",
  },
});
