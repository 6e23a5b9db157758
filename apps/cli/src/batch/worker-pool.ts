import type { JudgedFile } from "./judged-file.ts";

/** A worker as the pool sees it: takes files, gives back what became of them, in order. */
export interface BatchWorker {
  postMessage(files: readonly string[]): void;
  on(event: "message", listener: (judged: readonly JudgedFile[]) => void): unknown;
  on(event: "error", listener: (error: Error) => void): unknown;
  terminate(): Promise<unknown>;
}

/** Files handed over at once: few enough that no worker waits long for another at the end. */
const filesAtOnce = 8;

/**
 * Judges files with several workers at once. Results come back in the order of `files`, whichever
 * worker was first. A worker that breaks ends the batch with its error.
 */
export async function judgeInWorkers(
  files: readonly string[],
  workers: readonly BatchWorker[],
  onJudged: (count: number) => void,
): Promise<JudgedFile[]> {
  const results: JudgedFile[] = [];
  let next = 0;
  let done = 0;
  try {
    await new Promise<void>((resolve, reject) => {
      for (const worker of workers) {
        let from = 0;
        const handOver = () => {
          if (next >= files.length) return;
          from = next;
          next = Math.min(files.length, next + filesAtOnce);
          worker.postMessage(files.slice(from, next));
        };
        worker.on("error", reject);
        worker.on("message", (judged) => {
          for (const [index, one] of judged.entries()) results[from + index] = one;
          done += judged.length;
          onJudged(done);
          if (done === files.length) resolve();
          else handOver();
        });
        handOver();
      }
    });
  } finally {
    await Promise.all(workers.map((worker) => worker.terminate()));
  }
  return results;
}
