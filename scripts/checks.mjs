// `npm test`: lint, types, architecture, dead code, then the tests. All run even when one fails; the last line counts them.
import { spawn } from "node:child_process";
import { existsSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { writeExampleTests } from "./examples/write-example-tests.mjs";
import { root } from "./places.mjs";

/** Where scripts/count-reporter.mjs leaves what the test run counted. */
export const countsFile = join(root, ".cache", "test-counts.json");

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
  const counts = existsSync(countsFile)
    ? JSON.parse(readFileSync(countsFile, "utf8"))
    : { passed: 0, failed: 0, skipped: 0 };
  // A crash, an error outside any test or a run without tests counts as a failure of its own.
  if (counts.failed === 0 && (code !== 0 || counts.passed === 0)) counts.failed = 1;
  return counts;
}

/** @returns {Promise<number>} exit code */
export async function runChecks() {
  await writeExampleTests();
  const checked = await runTwoAtATime(staticChecks());
  const tested = await runTests();
  const passed = checked.passed + tested.passed;
  const failed = checked.failed + tested.failed;
  process.stdout.write(`${passed} passed, ${failed} failed, ${checked.skipped + tested.skipped} skipped\n`);
  return failed === 0 ? 0 : 1;
}
