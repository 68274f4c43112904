import { availableParallelism } from "node:os";
import { defineConfig } from "vitest/config";

// Tests run on the sources: the private condition resolves each package to its `src`.
const conditions = ["@scantling/source"];

export default defineConfig({
  resolve: { conditions },
  ssr: { resolve: { conditions } },
  test: {
    allowOnly: false,
    // As a rule one core is left to the one who waits; on two that would halve the pace.
    ...(availableParallelism() === 2 ? { maxWorkers: 2 } : {}),
    projects: [
      {
        extends: true,
        test: {
          name: "unit",
          include: ["packages/*/test/**/*.test.ts", "tests/unit/**/*.test.ts", "examples/**/*.test.ts"],
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
      {
        extends: true,
        test: {
          name: "system",
          include: ["tests/system/**/*.test.ts"],
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
});
