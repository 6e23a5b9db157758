// `npm test`: lint, types, architecture, dead code, then the tests. All run even when one fails; the last line counts them.
import { spawn } from "node:child_process";
import { existsSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { writeExampleTests } from "./examples/write-example-tests.mjs";
import { root } from "./places.mjs";
import { ensureSystemPackages } from "./system-packages.mjs";
import { ensureWeb } from "./web.mjs";

/** Where scripts/count-reporter.mjs leaves what the test run counted. */
export const countsFile = join(root, ".cache", "test-counts.json");

const journeyCountsFile = join(root, ".cache", "journey-counts.json");

/** @typedef {{ name: string, script: string, args: string[] }} Check */

const bin = (/** @type {string} */ path) => join(root, "node_modules", path);

/** A workspace without a tsconfig is still listed, so that its check fails rather than passing unseen. @returns {string[]} */
function typeProjects() {
  const workspaces = ["packages", "apps"].flatMap((group) =>
    readdirSync(join(root, group)).map((name) => `${group}/${name}`),
  );
  const tests = workspaces
    .map((path) => `${path}/tsconfig.test.json`)
    .filter((file) => existsSync(join(root, file)));
  return [
    ...workspaces.map((path) => `${path}/tsconfig.json`),
    ...tests,
    "tsconfig.json",
    "scripts/examples/tsconfig.json",
  ];
}

/** @returns {Check[]} */
function staticChecks() {
  const tsc = bin("typescript/bin/tsc");
  return [
    {
      name: "lint and format",
      script: bin("@biomejs/biome/bin/biome"),
      args: ["check", "--error-on-warnings", "."],
    },
    ...typeProjects().map((project) => ({ name: `types ${project}`, script: tsc, args: ["-p", project] })),
    { name: "architecture", script: join(root, "scripts/architecture.mjs"), args: [] },
    { name: "dead code", script: bin("knip/bin/knip.js"), args: ["--no-progress"] },
  ];
}

/** @param {Check} check @returns {Promise<boolean>} whether it passed; what it printed is shown only when it did not */
function run({ name, script, args }) {
  return new Promise((resolve) => {
    let output = "";
    const child = spawn(process.execPath, [script, ...args], {
      cwd: root,
      stdio: ["ignore", "pipe", "pipe"],
    });
    child.stdout.on("data", (text) => (output += text));
    child.stderr.on("data", (text) => (output += text));
    child.on("close", (code) => {
      process.stdout.write(code === 0 ? `ok      ${name}\n` : `FAILED  ${name}\n${output}\n`);
      resolve(code === 0);
    });
  });
}

/** As many at once as the reference machine has cores. @param {Check[]} checks */
async function runTwoAtATime(checks) {
  const waiting = [...checks];
  let failed = 0;
  const lane = async () => {
    for (let check = waiting.shift(); check !== undefined; check = waiting.shift()) {
      if (!(await run(check))) failed += 1;
    }
  };
  await Promise.all([lane(), lane()]);
  return { passed: checks.length - failed, failed, skipped: 0 };
}

/** @returns {Promise<{ passed: number, failed: number, skipped: number }>} */
async function runTests() {
  rmSync(countsFile, { force: true });
  const code = await new Promise((resolve) => {
    const child = spawn(process.execPath, [bin("vitest/vitest.mjs"), "run"], { cwd: root, stdio: "inherit" });
    child.on("close", (status) => resolve(status ?? 1));
  });
  return countsIn(countsFile, code);
}

/** A crash, an error outside any test or a run without tests counts as a failure of its own. @param {string} file @param {number} code */
function countsIn(file, code) {
  const text = existsSync(file) ? readFileSync(file, "utf8") : "";
  const counts = text === "" ? { passed: 0, failed: 0, skipped: 0 } : JSON.parse(text);
  if (counts.failed === 0 && (code !== 0 || counts.passed === 0)) counts.failed = 1;
  return counts;
}

/** Journeys through the built workbench in a real browser. @returns {Promise<{ passed: number, failed: number, skipped: number }>} */
async function runJourneys() {
  rmSync(journeyCountsFile, { force: true });
  const files = readdirSync(join(root, "e2e"))
    .filter((name) => name.endsWith(".test.mjs"))
    .map((name) => join("e2e", name));
  const words = ["--import", "tsx", "--test", "--test-concurrency=1", "--test-reporter=spec"];
  const counting = ["--test-reporter-destination=stdout", "--test-reporter=./scripts/count-journeys.mjs"];
  const code = await new Promise((resolve) => {
    const child = spawn(
      process.execPath,
      [...words, ...counting, `--test-reporter-destination=${journeyCountsFile}`, ...files],
      { cwd: root, stdio: "inherit" },
    );
    child.on("close", (status) => resolve(status ?? 1));
  });
  return countsIn(journeyCountsFile, code);
}

/** @returns {Promise<number>} exit code */
export async function runChecks() {
  ensureSystemPackages();
  await writeExampleTests();
  await ensureWeb();
  const parts = [await runTwoAtATime(staticChecks()), await runTests(), await runJourneys()];
  const sum = (/** @type {"passed" | "failed" | "skipped"} */ key) =>
    parts.reduce((total, part) => total + part[key], 0);
  process.stdout.write(`${sum("passed")} passed, ${sum("failed")} failed, ${sum("skipped")} skipped\n`);
  return sum("failed") === 0 ? 0 : 1;
}
