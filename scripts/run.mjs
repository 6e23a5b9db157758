// The one way in: `npm start`, `npm test`, `npm run bench`, `npm run --silent pintle -- …`.
// Node built-ins only, so that it runs in a fresh checkout; whatever needs a package is imported after the set-up.
import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { requireNode } from "./node-version.mjs";
import { enterCallersFolder, root } from "./places.mjs";
import { ensureInstalled } from "./set-up.mjs";

/** The job that a first `npm start` opens: the invented farm's gate. */
const demoJob = "examples/harrow-farm.json";

const usage = `usage: node scripts/run.mjs start | test | bench | pintle [arguments]`;

/** @param {string[]} args */
async function runPintle(args) {
  const { ensureBundle } = await import("./bundle.mjs");
  const bundleUrl = await ensureBundle();
  process.argv = [process.argv[0] ?? "node", "pintle", ...args];
  await import(bundleUrl);
}

/** @type {Record<string, (args: string[]) => Promise<void>>} */
const tasks = {
  async start() {
    process.chdir(root);
    const { ensureWeb } = await import("./web.mjs");
    await ensureWeb();
    const { ensureBundle } = await import("./bundle.mjs");
    const bundle = fileURLToPath(await ensureBundle());
    spawnSync(process.execPath, [bundle, "first-look", demoJob], { stdio: "inherit" });
    await runPintle(["serve", "--open"]);
  },
  async pintle(args) {
    enterCallersFolder();
    await runPintle(args);
  },
  async test() {
    process.chdir(root);
    const { runChecks } = await import("./checks.mjs");
    process.exitCode = await runChecks();
  },
  async bench(args) {
    process.chdir(root);
    const { runBenchmarks } = await import("./bench.mjs");
    process.exitCode = await runBenchmarks(args);
  },
};

requireNode();
const [name, ...args] = process.argv.slice(2);
const task = name === undefined ? undefined : tasks[name];
if (task === undefined) {
  process.stderr.write(`${usage}\n`);
  process.exitCode = 2;
} else {
  await ensureInstalled();
  await task(args);
}
