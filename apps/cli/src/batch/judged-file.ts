import type { CheckDocument, Fault } from "@pintle/job";
import { type ExitCode, exitCode } from "../exit-code.ts";
import { loadJob } from "../input/load-job.ts";
import type { Operations } from "../operations.ts";

/** What became of one file of many; plain data, so that it crosses from a worker. */
export type JudgedFile =
  | {
      readonly ok: true;
      readonly file: string;
      readonly title: string;
      readonly fail: number;
      readonly notChecked: number;
      /** Leaves whose pins could not be judged at all: not a pass. */
      readonly unplaced: number;
      /** Null when only the counts were asked for: whole documents of many thousand jobs take room and time. */
      readonly document: CheckDocument | null;
    }
  | { readonly ok: false; readonly file: string; readonly faults: readonly Fault[] };

export async function judgeFile(
  file: string,
  check: Operations["check"],
  inFull: boolean,
): Promise<JudgedFile> {
  const loaded = await loadJob(file);
  if (!loaded.ok) return { ok: false, file, faults: loaded.faults };
  const document = check(loaded.job);
  const { fail, notChecked } = document.summary;
  const unplaced = document.findings.filter(({ id }) => id === "placement").length;
  const title = loaded.job.title ?? "";
  return { ok: true, file, title, fail, notChecked, unplaced, document: inFull ? document : null };
}

export function exitCodeOf(judged: JudgedFile): ExitCode {
  if (!judged.ok) return exitCode.badInput;
  return judged.fail > 0 ? exitCode.limitFails : exitCode.nothingFails;
}
