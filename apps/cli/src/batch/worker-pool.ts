/** A worker as the pool sees it: takes a task, answers with its result, one after another. */
export interface PoolWorker<Task, Result> {
  postMessage(task: Task): void;
  on(event: "message", listener: (result: Result) => void): unknown;
  on(event: "error", listener: (error: Error) => void): unknown;
  terminate(): Promise<unknown>;
}

/**
 * Does tasks with several workers at once and ends the workers. Results come back in the order of `tasks`,
 * whichever worker was first. A worker that breaks ends it all with its error.
 */
export async function runInWorkers<Task, Result>(
  tasks: readonly Task[],
  workers: readonly PoolWorker<Task, Result>[],
  onDone: (result: Result) => void,
): Promise<Result[]> {
  const results: Result[] = [];
  let next = 0;
  let done = 0;
  try {
    await new Promise<void>((resolve, reject) => {
      if (tasks.length === 0) resolve();
      for (const worker of workers) {
        let at = 0;
        const handOver = () => {
          const task = tasks[next];
          if (task === undefined) return;
          at = next;
          next += 1;
          worker.postMessage(task);
        };
        worker.on("error", reject);
        worker.on("message", (result) => {
          results[at] = result;
          done += 1;
          onDone(result);
          if (done === tasks.length) resolve();
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
