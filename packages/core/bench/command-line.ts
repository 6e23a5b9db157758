import { spawn, spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { jobText } from "./example-job.ts";
import type { Timing } from "./timing.ts";
import { timeRuns } from "./timing.ts";

/** What the built command line does: start cold on one job, and get through a folder of many. */
export interface CommandLineTimings {
  readonly coldStart: Timing;
  /** Node alone, starting an empty script: the part of a cold start that no program can save. */
  readonly nodeAlone: Timing;
  readonly jobs: number;
  readonly batch: readonly { readonly workers: number; readonly timing: Timing }[];
}

const jobs = 4000;

/** Runs Node on arguments and waits; 0 and 1 are the answers of `check`, anything else is not. */
function runNode(args: readonly string[]): Promise<void> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, args, { stdio: "ignore" });
    child.on("error", reject);
    child.on("close", (code) => {
      if (code === 0 || code === 1) resolve();
      else reject(new Error(`node ${args.join(" ")} ended with ${code}: expected 0 or 1`));
    });
  });
}

/** Times `pintle check` through the bundle; null while `check` does not answer yet. */
export async function timeCommandLine(bundle: string): Promise<CommandLineTimings | null> {
  const folder = mkdtempSync(join(tmpdir(), "pintle-bench-"));
  try {
    const one = join(folder, "one.json");
    writeFileSync(one, jobText());
    const status = spawnSync(process.execPath, [bundle, "check", one], { stdio: "ignore" }).status;
    if (status !== 0 && status !== 1) return null;
    const empty = join(folder, "empty.mjs");
    writeFileSync(empty, "");
    const coldStart = await timeRuns(() => runNode([bundle, "check", one]), 20);
    const nodeAlone = await timeRuns(() => runNode([empty]), 20);
    const many = mkdtempSync(join(folder, "many-"));
    for (let i = 0; i < jobs; i++) writeFileSync(join(many, `job-${i}.json`), jobText((20 * i) / jobs));
    const batch = [];
    for (const workers of [1, 2]) {
      const timing = await timeRuns(() => runNode([bundle, "check", many, "--workers", String(workers)]), 3);
      batch.push({ workers, timing });
    }
    return { coldStart, nodeAlone, jobs, batch };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
