import { defineConfig } from "vitest/config";

// One seed for the order of tests, so that a failure that depends on order can be seen again.
const seed = Number(process.env.STEELYARD_TEST_SEED ?? 20261125);

export default defineConfig({
  test: {
    include: ["{packages,apps}/*/{src,test}/**/*.test.{ts,tsx}", "{reference,test,bench}/**/*.test.ts"],
    sequence: { shuffle: true, seed },
  },
});
