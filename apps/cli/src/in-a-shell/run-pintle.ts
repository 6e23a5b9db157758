import { spawnSync } from "node:child_process";
import { chmodSync, copyFileSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { onTestFinished } from "vitest";

export const bundle = fileURLToPath(new URL("../../../../dist/pintle.mjs", import.meta.url));

interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

interface Settings {
  readonly folder: string;
  readonly input?: string;
  /** Without root's rights, to which no file is closed. */
  readonly unprivileged?: boolean;
  readonly env?: Readonly<Record<string, string>>;
}

/** Runs the built command line as people do, in a process of its own. */
export function pintle(words: readonly string[], { folder, input, unprivileged, env }: Settings): Ran {
  const nobody = unprivileged && process.getuid?.() === 0 ? { uid: 65534, gid: 65534 } : {};
  const run = spawnSync(process.execPath, [unprivileged ? openCopy() : bundle, ...words], {
    cwd: folder,
    input: input ?? "",
    encoding: "utf8",
    env: { PATH: process.env.PATH, ...env },
    maxBuffer: 64 * 1024 * 1024,
    ...nobody,
  });
  if (run.error !== undefined) throw run.error;
  return { code: run.status, out: run.stdout, err: run.stderr };
}

/** A folder of its own for one test, removed after it. */
export function freshFolder(files: Readonly<Record<string, string>> = {}): string {
  const folder = mkdtempSync(join(tmpdir(), "pintle-"));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  chmodSync(folder, 0o755);
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  return folder;
}

/** The checkout may lie where another user cannot look; a copy of the one file is enough. */
function openCopy(): string {
  const copy = join(freshFolder(), "pintle.mjs");
  copyFileSync(bundle, copy);
  return copy;
}
