// Installs the packages when, and only when, they differ from package-lock.json.
import { spawn } from "node:child_process";
import { createHash } from "node:crypto";
import { mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { root } from "./places.mjs";

const lockFile = join(root, "package-lock.json");
const stampFile = join(root, "node_modules", ".pintle-set-up");
const turnstile = join(root, ".cache", "set-up.pid");

/** @param {string} file */
function readIfThere(file) {
  try {
    return readFileSync(file, "utf8");
  } catch {
    return null;
  }
}

/** Native parts differ by platform and by Node's major version, so the stamp names them too. */
const here = `${process.platform}-${process.arch} node${process.versions.node.split(".")[0]}`;

function wantedStamp() {
  return `${createHash("sha256").update(readFileSync(lockFile)).digest("hex")} ${here}\n`;
}

/** After an `npm install` by hand the packages already match the lock; npm keeps its own record of what it put there. */
function alreadyMatches() {
  const record = readIfThere(join(root, "node_modules", ".package-lock.json"));
  const isFromElsewhere = readIfThere(stampFile)?.includes(here) === false;
  if (record === null || isFromElsewhere) return false;
  const wanted = JSON.parse(readFileSync(lockFile, "utf8")).packages;
  const present = JSON.parse(record).packages;
  return Object.keys(wanted).every((path) => {
    const [want, have] = [wanted[path], present[path]];
    if (have === undefined) return path === "" || want.optional === true;
    return have.version === want.version && have.integrity === want.integrity;
  });
}

/** Whether the process that holds the turnstile still runs; one that died must not lock everybody out. */
function holderRuns() {
  const pid = Number(readIfThere(turnstile));
  // Between making the file and writing the number into it there is a moment without a number.
  if (pid === 0) return Date.now() - (statSync(turnstile, { throwIfNoEntry: false })?.mtimeMs ?? 0) < 5000;
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return /** @type {NodeJS.ErrnoException} */ (error).code === "EPERM";
  }
}

function tryToEnter() {
  try {
    writeFileSync(turnstile, String(process.pid), { flag: "wx" });
    return true;
  } catch (error) {
    if (/** @type {NodeJS.ErrnoException} */ (error).code !== "EEXIST") throw error;
    return false;
  }
}

/** Two `pintle` calls in a fresh checkout: the first installs, the second waits and finds the work done. */
async function enterTurnstile() {
  mkdirSync(join(root, ".cache"), { recursive: true });
  while (!tryToEnter()) {
    await wait(200);
    if (!holderRuns()) rmSync(turnstile, { force: true });
  }
}

/** @returns {Promise<{ code: number, output: string }>} */
function runNpm() {
  const npm = process.env.npm_execpath;
  const [command, first] = npm?.endsWith(".js") ? [process.execPath, [npm]] : [npm ?? "npm", []];
  return new Promise((resolve) => {
    let output = "";
    const child = spawn(command, [...first, "ci", "--no-audit", "--no-fund"], {
      cwd: root,
      stdio: ["ignore", "pipe", "pipe"],
      shell: process.platform === "win32" && npm === undefined,
    });
    child.stdout.on("data", (text) => (output += text));
    child.stderr.on("data", (text) => (output += text));
    child.on("error", (error) => resolve({ code: 1, output: String(error) }));
    child.on("close", (code) => resolve({ code: code ?? 1, output }));
  });
}

/** Makes node_modules match the lock file; silent when it does already. */
export async function ensureInstalled() {
  if (readIfThere(stampFile) === wantedStamp()) return;
  await enterTurnstile();
  try {
    if (readIfThere(stampFile) === wantedStamp()) return;
    if (!alreadyMatches()) {
      process.stderr.write("Setting up: installing the packages that Pintle needs …\n");
      const { code, output } = await runNpm();
      if (code !== 0) {
        process.stderr.write(`${output}\nThe packages could not be installed (npm ended with ${code}).\n`);
        process.exit(2);
      }
    }
    writeFileSync(stampFile, wantedStamp());
  } finally {
    rmSync(turnstile, { force: true });
  }
}
