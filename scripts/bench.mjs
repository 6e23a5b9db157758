import { spawnSync } from "node:child_process";

/** Runs the benchmarks in a process of their own. @param {string[]} args @returns {Promise<number>} its exit code */
export async function runBenchmarks(args) {
  const run = spawnSync(process.execPath, ["--import", "tsx", "packages/core/bench/run.ts", ...args], {
    stdio: "inherit",
  });
  return run.status ?? 1;
}
