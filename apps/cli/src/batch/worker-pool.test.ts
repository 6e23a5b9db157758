import { expect, test } from "vitest";
import { type PoolWorker, runInWorkers } from "./worker-pool.ts";

/** A worker without a thread: answers after a delay of its own, so that the slow one is overtaken. */
function pretendWorker(delays: () => number, breaksAt?: number) {
  const listeners: { message?: (result: string) => void; error?: (error: Error) => void } = {};
  const state = { isEnded: false };
  const worker: PoolWorker<number, string> = {
    postMessage: (task) => {
      setTimeout(() => {
        if (task === breaksAt) listeners.error?.(new Error("broke"));
        else listeners.message?.(`did ${task}`);
      }, delays());
    },
    on: (event: "message" | "error", listener: never) => {
      listeners[event] = listener;
    },
    terminate: async () => {
      state.isEnded = true;
    },
  };
  return { worker, state };
}

const tasks = Array.from({ length: 60 }, (_, index) => index);

test("[I15] results stand in the order of the tasks, whichever worker is first", async () => {
  const workers = [pretendWorker(() => 5), pretendWorker(() => 0), pretendWorker(() => 1)];
  const seen: string[] = [];
  const results = await runInWorkers(
    tasks,
    workers.map(({ worker }) => worker),
    (result) => seen.push(result),
  );
  expect(results).toEqual(tasks.map((task) => `did ${task}`));
  expect(seen).toHaveLength(tasks.length);
  // Otherwise no worker was overtaken, and the order was never put to the test.
  expect(seen).not.toEqual(results);
  expect(workers.every(({ state }) => state.isEnded)).toBe(true);
});

test("[I15] a worker that breaks ends the work, and no worker is left running", async () => {
  const breaksAt = 42;
  const workers = [pretendWorker(() => 0, breaksAt), pretendWorker(() => 0, breaksAt)];
  const work = runInWorkers(
    tasks,
    workers.map(({ worker }) => worker),
    () => undefined,
  );
  await expect(work).rejects.toThrow("broke");
  expect(workers.every(({ state }) => state.isEnded)).toBe(true);
});

test("[I15] no task, no waiting", async () => {
  const { worker, state } = pretendWorker(() => 0);
  expect(await runInWorkers([], [worker], () => undefined)).toEqual([]);
  expect(state.isEnded).toBe(true);
});
