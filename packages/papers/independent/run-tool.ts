import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { onTestFinished, vi } from "vitest";

// Other people's programs start slowly on a busy machine; how long they take is not what is tested.
vi.setConfig({ testTimeout: 120_000 });

/** Debian package of each program that the papers are checked with. */
const packages: Readonly<Record<string, string>> = {
  pdftoppm: "poppler-utils",
  pdftotext: "poppler-utils",
  pdfinfo: "poppler-utils",
  qpdf: "qpdf",
  "rsvg-convert": "librsvg2-bin",
  // Debian's own Python, which sees Debian's ezdxf; another one first on the path does not.
  "/usr/bin/python3": "python3-ezdxf",
};

/** Runs a program and gives what it prints. Missing or failing programs fail the test and say what to install. */
export function runTool(program: string, words: readonly string[]): Buffer {
  const run = spawnSync(program, words, { maxBuffer: 256 * 1024 * 1024 });
  if (run.error !== undefined) {
    throw new Error(`${program} did not start (${run.error.message}); Debian package ${packages[program]}`);
  }
  if (run.status !== 0) throw new Error(`${program} ended with ${run.status}: ${run.stderr}`);
  return run.stdout;
}

/** Writes bytes to a file of its own for one test. @returns its path */
export function fileFor(name: string, bytes: Uint8Array | string): string {
  const folder = mkdtempSync(join(tmpdir(), "pintle-papers-"));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const path = join(folder, name);
  writeFileSync(path, bytes);
  return path;
}
