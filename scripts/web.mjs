// The workbench as static files in dist/web: built when a source is newer than what lies there.
import { spawn } from "node:child_process";
import { statSync } from "node:fs";
import { join } from "node:path";
import { newestIn, packageSources } from "./bundle.mjs";
import { root } from "./places.mjs";

const built = join(root, "dist", "web", "index.html");

function isCurrent() {
  const made = statSync(built, { throwIfNoEntry: false })?.mtimeMs;
  if (made === undefined) return false;
  const app = join(root, "apps", "web");
  const folders = [...packageSources(), join(app, "src"), join(app, "public"), join(root, "examples")];
  const files = [join(root, "package-lock.json"), join(app, "index.html"), join(app, "vite.config.ts")];
  return Math.max(...files.map((file) => statSync(file).mtimeMs), ...folders.map(newestIn)) < made;
}

/** Builds the workbench when needed; what the build prints is shown only when it fails. */
export async function ensureWeb() {
  if (isCurrent()) return;
  process.stderr.write("Building the workbench …\n");
  const vite = join(root, "node_modules", "vite", "bin", "vite.js");
  let output = "";
  const code = await new Promise((resolve) => {
    const child = spawn(process.execPath, [vite, "build", "--logLevel", "warn"], {
      cwd: join(root, "apps", "web"),
      stdio: ["ignore", "pipe", "pipe"],
    });
    child.stdout.on("data", (text) => (output += text));
    child.stderr.on("data", (text) => (output += text));
    child.on("close", (status) => resolve(status ?? 1));
  });
  if (code !== 0) throw new Error(`the workbench could not be built (${code}):\n${output}`);
}
