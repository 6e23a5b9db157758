import { spawnSync } from "node:child_process";
import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { ensureBundle } from "./bundle.mjs";
import { root } from "./places.mjs";

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
  return spawnSync(process.execPath, [bundled, pintle, ...args], { cwd: root, stdio: "inherit" }).status ?? 1;
}
