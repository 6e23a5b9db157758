// The command line as one file: a cold start loads one script instead of some hundreds.
import { mkdirSync, readdirSync, renameSync, statSync, utimesSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { root } from "./places.mjs";

const bundleFile = join(root, "dist", "pintle.mjs");

/** Source folders of the packages that every face is built from. */
export function packageSources() {
  return readdirSync(join(root, "packages")).map((name) => join(root, "packages", name, "src"));
}

/** Folders count too: their time moves when a file is added or taken away. @param {string} folder @returns {number} */
export function newestIn(folder) {
  let newest = statSync(folder).mtimeMs;
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    if (entry.name.endsWith(".test.ts")) continue;
    const path = join(folder, entry.name);
    newest = Math.max(newest, entry.isDirectory() ? newestIn(path) : statSync(path).mtimeMs);
  }
  return newest;
}

function isCurrent() {
  const made = statSync(bundleFile, { throwIfNoEntry: false })?.mtimeMs;
  if (made === undefined) return false;
  const files = ["package-lock.json", "scripts/bundle.mjs"].map((name) => statSync(join(root, name)).mtimeMs);
  return Math.max(...files, ...[...packageSources(), join(root, "apps", "cli", "src")].map(newestIn)) < made;
}

/** Builds the bundle when a source is newer than it. @returns {Promise<string>} its file URL */
export async function ensureBundle() {
  if (!isCurrent()) await build();
  return pathToFileURL(bundleFile).href;
}

async function build() {
  const started = new Date();
  const { build: esbuild } = await import("esbuild");
  mkdirSync(join(root, "dist"), { recursive: true });
  // Written aside and renamed, so that a second call never loads half a file.
  const aside = `${bundleFile}.${process.pid}`;
  await esbuild({
    absWorkingDir: root,
    entryPoints: ["apps/cli/src/main.ts"],
    outfile: aside,
    bundle: true,
    platform: "node",
    format: "esm",
    target: "node20.19",
    minify: true,
    legalComments: "none",
    logLevel: "error",
    // Some packages offer their CommonJS form first, wrapped so that no bundler can see into it.
    mainFields: ["module", "main"],
    // Some packages inside are CommonJS and call `require` for Node's own modules.
    banner: { js: 'import{createRequire as __r}from"node:module";const require=__r(import.meta.url);' },
  });
  // Dated by when the build began: a source saved while it ran is then newer than the bundle.
  utimesSync(aside, started, started);
  renameSync(aside, bundleFile);
}
