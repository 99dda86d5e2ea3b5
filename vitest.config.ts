import { defineConfig } from "vitest/config";

// A slow or busy machine is no fault: tests assert what comes out, never how fast.
export default defineConfig({ test: { include: ["test/**/*.test.ts"], testTimeout: 180_000, hookTimeout: 180_000 } });
