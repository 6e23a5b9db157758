import type { ReportOptions } from "../commands/with-job.ts";
import { type ExitCode, gravest } from "../exit-code.ts";
import type { Outside } from "../outside.ts";
import { batchDocument } from "../reporters/json/batch.ts";
import { documentText } from "../reporters/json/document-text.ts";
import { batchText } from "../reporters/text/batch.ts";
import { faultText } from "../reporters/text/faults.ts";
import { exitCodeOf, type JudgedFile, judgeFile } from "./judged-file.ts";
import { startProgress } from "./progress.ts";
import { runInWorkers } from "./worker-pool.ts";
import { startWorkers } from "./worker-tasks.ts";

/** A worker costs as much to start as about this many jobs cost to judge. */
const filesWorthAWorker = 100;

/** Files handed over at once: few enough that no worker waits long for another at the end. */
const filesAtOnce = 16;

/** Judges many files, in parallel where that pays, and sums up. */
export async function checkMany(
  files: readonly string[],
  options: ReportOptions & { readonly workers?: number },
  outside: Outside,
): Promise<ExitCode> {
  const progress = await startProgress("jobs", files.length, outside.showsProgress);
  const worthIt = Math.min(outside.cores, Math.ceil(files.length / filesWorthAWorker));
  const workers = options.workers ?? worthIt;
  const inFull = options.json === true;
  const judged = await (workers > 1
    ? judgeInWorkers(files, inFull, workers, progress.update)
    : judgeHere(files, inFull, outside, progress.update));
  progress.stop();
  for (const one of judged) if (!one.ok) outside.tell(faultText(one.file, one.faults));
  outside.print(
    options.json ? documentText(batchDocument(judged)) : `${batchText(judged, outside.style).join("\n")}\n`,
  );
  return gravest(judged.map(exitCodeOf));
}

async function judgeHere(
  files: readonly string[],
  inFull: boolean,
  outside: Outside,
  onJudged: (count: number) => void,
) {
  const judged: JudgedFile[] = [];
  for (const file of files) {
    judged.push(await judgeFile(file, outside.operations.check, inFull));
    onJudged(judged.length);
  }
  return judged;
}

async function judgeInWorkers(
  files: readonly string[],
  inFull: boolean,
  count: number,
  onJudged: (count: number) => void,
) {
  const tasks = Array.from({ length: Math.ceil(files.length / filesAtOnce) }, (_, index) => ({
    kind: "judge" as const,
    inFull,
    files: files.slice(index * filesAtOnce, (index + 1) * filesAtOnce),
  }));
  let done = 0;
  const workers = startWorkers<"judge">(Math.min(count, tasks.length));
  const results = await runInWorkers(tasks, workers, ({ value }) => {
    done += value.length;
    onJudged(done);
  });
  return results.flatMap(({ value }) => value);
}
