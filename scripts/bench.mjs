import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { ensureBundle } from "./bundle.mjs";
import { root } from "./places.mjs";
import { ensureSystemPackages } from "./system-packages.mjs";
import { ensureWeb } from "./web.mjs";

/**
 * Runs the benchmarks in a process of their own. They are bundled first, as the command line is: code that a
 * loader translates on the way carries marks of it that cost time.
 * @param {string[]} args @returns {Promise<number>} its exit code
 */
export async function runBenchmarks(args) {
  const pintle = fileURLToPath(await ensureBundle());
  const { build } = await import("esbuild");
  const folder = join(root, ".cache", "bench");
  mkdirSync(folder, { recursive: true });
  const bundled = join(folder, "run.mjs");
  await build({
    absWorkingDir: root,
    entryPoints: ["packages/core/bench/run.ts"],
    outfile: bundled,
    bundle: true,
    packages: "external",
    platform: "node",
    format: "esm",
    target: "node20.19",
    logLevel: "error",
  });
  const core = run([bundled, pintle, ...args]);
  timePack(pintle);
  // The workbench in a real browser: frames of a drag, bytes and time to the first drawing.
  ensureSystemPackages();
  await ensureWeb();
  const web = run(["--import", "tsx", "e2e/drag-frames.mjs"]);
  return core === 0 ? web : core;
}

/** @param {string[]} words */
const run = (words) => spawnSync(process.execPath, words, { cwd: root, stdio: "inherit" }).status ?? 1;

/** The full pack of the demo job by the command line, start and end of the process included. @param {string} pintle */
function timePack(pintle) {
  const folder = mkdtempSync(join(tmpdir(), "pintle-pack-"));
  const times = [1, 2, 3].map(() => {
    const started = performance.now();
    const words = ["pack", "examples/harrow-farm.json", "--out", folder, "--force"];
    const packed = spawnSync(process.execPath, [pintle, ...words], { cwd: root, encoding: "utf8" });
    if (packed.status !== 0) throw new Error(`pintle pack ended with ${packed.status}:\n${packed.stderr}`);
    return (performance.now() - started) / 1000;
  });
  rmSync(folder, { recursive: true, force: true });
  const median = times.sort((a, b) => a - b)[1] ?? 0;
  process.stdout.write(`full pack of the demo job: ${median.toFixed(2)} s (at most 2 s asked)\n`);
}
