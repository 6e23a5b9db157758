import { defineConfig } from "vitest/config";
import { exampleTestsFolder, writeExampleTests } from "./scripts/examples/write-example-tests.mjs";

await writeExampleTests();

export default defineConfig({
  test: {
    include: [
      "packages/*/src/**/*.test.ts",
      "packages/*/independent/**/*.test.ts",
      "apps/*/src/**/*.test.ts",
      "scripts/**/*.test.ts",
      "reference/**/*.test.ts",
      "e2e/storage/**/*.test.ts",
      `${exampleTestsFolder}/**/*.test.ts`,
    ],
    globalSetup: ["scripts/bundle-for-tests.mjs"],
    maxWorkers: 2,
    // A test is never failed for a slow machine; this only ends one that hangs.
    testTimeout: 120_000,
    reporters: [["default", { summary: false }], "./scripts/count-reporter.mjs"],
  },
});
