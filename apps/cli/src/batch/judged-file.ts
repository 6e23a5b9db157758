import type { CheckDocument, Fault } from "@pintle/job";
import { type ExitCode, exitCode } from "../exit-code.ts";
import { loadJob } from "../input/load-job.ts";
import type { Operations } from "../operations.ts";

/** What became of one file of many; plain data, so that it crosses from a worker. */
export type JudgedFile =
  | { readonly ok: true; readonly file: string; readonly title: string; readonly document: CheckDocument }
  | { readonly ok: false; readonly file: string; readonly faults: readonly Fault[] };

export async function judgeFile(file: string, check: Operations["check"]): Promise<JudgedFile> {
  const loaded = await loadJob(file);
  if (!loaded.ok) return { ok: false, file, faults: loaded.faults };
  return { ok: true, file, title: loaded.job.title ?? "", document: check(loaded.job) };
}

export function exitCodeOf(judged: JudgedFile): ExitCode {
  if (!judged.ok) return exitCode.badInput;
  const fails = judged.document.findings.some(({ state }) => state === "fail");
  return fails ? exitCode.limitFails : exitCode.nothingFails;
}
