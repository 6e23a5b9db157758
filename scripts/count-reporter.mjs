import { mkdirSync, writeFileSync } from "node:fs";
import { dirname } from "node:path";
import { countsFile } from "./checks.mjs";

/** Leaves the number of tests for the closing line of `npm test`. */
export default class CountReporter {
  /** @param {readonly import("vitest/node").TestModule[]} modules @param {readonly unknown[]} errors */
  onTestRunEnd(modules, errors) {
    const counts = { passed: 0, failed: errors.length, skipped: 0 };
    for (const module of modules) {
      for (const test of module.children.allTests()) {
        const { state } = test.result();
        counts[state === "pending" ? "failed" : state] += 1;
      }
      // A file that could not be loaded has no tests to fail.
      if (module.errors().length > 0) counts.failed += 1;
    }
    mkdirSync(dirname(countsFile), { recursive: true });
    writeFileSync(countsFile, JSON.stringify(counts));
  }
}
