import { Worker } from "node:worker_threads";
import type { ReportOptions } from "../commands/with-job.ts";
import { type ExitCode, gravest } from "../exit-code.ts";
import type { Outside } from "../outside.ts";
import { batchDocument } from "../reporters/json/batch.ts";
import { documentText } from "../reporters/json/document-text.ts";
import { batchText } from "../reporters/text/batch.ts";
import { faultText } from "../reporters/text/faults.ts";
import { exitCodeOf, type JudgedFile, judgeFile } from "./judged-file.ts";
import { startProgress } from "./progress.ts";
import { judgeInWorkers } from "./worker-pool.ts";

/** A worker costs as much to start as about this many jobs cost to judge. */
const filesWorthAWorker = 24;

/** Judges many files, in parallel where that pays, and sums up. */
export async function checkMany(
  files: readonly string[],
  options: ReportOptions & { readonly workers?: number },
  outside: Outside,
): Promise<ExitCode> {
  const progress = await startProgress(files.length, outside.showsProgress);
  const workers = Math.min(options.workers ?? outside.cores, Math.ceil(files.length / filesWorthAWorker));
  const judged = await (workers > 1
    ? judgeInWorkers(files, startWorkers(workers), progress.update)
    : judgeHere(files, outside, progress.update));
  progress.stop();
  for (const one of judged) if (!one.ok) outside.tell(faultText(one.file, one.faults));
  outside.print(
    options.json ? documentText(batchDocument(judged)) : `${batchText(judged, outside.style).join("\n")}\n`,
  );
  return gravest(judged.map(exitCodeOf));
}

async function judgeHere(files: readonly string[], outside: Outside, onJudged: (count: number) => void) {
  const judged: JudgedFile[] = [];
  for (const file of files) {
    judged.push(await judgeFile(file, outside.operations.check));
    onJudged(judged.length);
  }
  return judged;
}

/** The bundle is one file: started as a worker it judges files instead of reading a command line. */
function startWorkers(count: number): Worker[] {
  return Array.from({ length: count }, () => new Worker(new URL(import.meta.url)));
}
