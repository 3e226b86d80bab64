import { defineConfig } from "vitest/config";

// One seed for the order of tests, so that a failure that depends on order can be seen again.
const seed = Number(process.env.STEELYARD_TEST_SEED ?? 20261125);

export default defineConfig({
  test: {
    sequence: { shuffle: true, seed },
    coverage: { include: ["packages/*/src/**"], exclude: ["**/*.test.ts"] },
    projects: [
      {
        extends: true,
        test: {
          name: "unit",
          // One worker for each processor; left alone there would be one less, which is half of a small machine.
          maxWorkers: "100%",
          // Some tests read whole surveys; a slow machine is no fault of theirs.
          testTimeout: 30_000,
          include: ["{packages,apps}/*/{src,test}/**/*.test.{ts,tsx}", "{reference,test,bench}/**/*.test.ts"],
        },
      },
      {
        extends: true,
        test: {
          name: "journeys",
          include: ["e2e/**/*.test.ts"],
          // One browser at a time: it has several processes of its own, and two of them were a fifth faster and late.
          fileParallelism: false,
          // A busy machine paints late; a page that never gets there still fails.
          expect: { poll: { timeout: 10_000 } },
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
    ],
  },
});
