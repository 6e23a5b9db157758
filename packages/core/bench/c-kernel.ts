import { spawnSync } from "node:child_process";
import { mkdirSync, readdirSync } from "node:fs";
import { join } from "node:path";
import type { Timing } from "./timing.ts";
import { timingOf } from "./timing.ts";

/** What is timed on both sides. */
export type KernelTask = "swing" | "reserve" | "search";

/** The same algorithms in plain C, built for this run. */
export interface Kernel {
  /** Numbers that the C port answers with, in the order of c/main.c. */
  answers(): number[];
  time(task: KernelTask, samples: number): Timing;
}

const compiler = "gcc";
const installer = "apt-get";
const sources = join("packages", "core", "bench", "c");
const howToInstall = "install a C compiler (Debian: apt-get install gcc libc6-dev) and run again";

function hasCompiler(): boolean {
  return spawnSync(compiler, ["--version"]).status === 0;
}

/** Debian as root: the compiler is fetched, as the other tools of this checkout are. */
function tryToInstall(): void {
  if (process.getuid?.() !== 0 || spawnSync(installer, ["--version"]).status !== 0) return;
  process.stderr.write("Setting up: installing a C compiler to compare with …\n");
  const quiet = { stdio: "ignore", env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" } } as const;
  const install = () => spawnSync(installer, ["install", "-y", "gcc", "libc6-dev"], quiet);
  if (install().status === 0) return;
  spawnSync(installer, ["update"], quiet);
  install();
}

/** Builds the C port at -O2 into `.cache/bench`, for a case as numbers; the reason in words when it cannot. */
export function buildKernel(
  caseNumbers: string,
): { readonly ok: true; readonly kernel: Kernel } | { readonly ok: false; readonly why: string } {
  if (!hasCompiler()) tryToInstall();
  if (!hasCompiler()) return { ok: false, why: `${compiler} was not found; ${howToInstall}` };
  const folder = join(".cache", "bench");
  mkdirSync(folder, { recursive: true });
  const program = join(folder, "kernel");
  const files = readdirSync(sources).filter((name) => name.endsWith(".c"));
  const build = spawnSync(
    compiler,
    ["-std=c99", "-O2", "-o", program, ...files.map((name) => join(sources, name)), "-lm"],
    { encoding: "utf8" },
  );
  if (build.status !== 0) return { ok: false, why: `${compiler} could not build the port:\n${build.stderr}` };
  const run = (args: readonly string[]): number[] => {
    const { status, stdout, stderr } = spawnSync(program, args, { input: caseNumbers, encoding: "utf8" });
    if (status !== 0) throw new Error(`the C port ended with ${status}: ${stderr}`);
    return stdout.trim().split(/\s+/).map(Number);
  };
  return {
    ok: true,
    kernel: {
      answers: () => run(["answers"]),
      time: (task, samples) =>
        timingOf(run([task, String(samples)]).map((nanoseconds) => nanoseconds * 1e-6)),
    },
  };
}
