import { expect, test } from "vitest";
import type { JudgedFile } from "./judged-file.ts";
import { type BatchWorker, judgeInWorkers } from "./worker-pool.ts";

/** A worker without a thread: answers after a delay of its own, so that the slow one is overtaken. */
function pretendWorker(delays: () => number, breaksAt?: string) {
  const listeners: { message?: (judged: readonly JudgedFile[]) => void; error?: (error: Error) => void } = {};
  const state = { isEnded: false };
  const worker: BatchWorker = {
    postMessage: (files) => {
      setTimeout(() => {
        if (breaksAt !== undefined && files.includes(breaksAt)) listeners.error?.(new Error("broke"));
        else listeners.message?.(files.map((file) => ({ ok: false, file, faults: [] })));
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

const files = Array.from({ length: 100 }, (_, index) => `${index}.json`);

test("[I15] results stand in the order of the files, whichever worker is first", async () => {
  const workers = [pretendWorker(() => 5), pretendWorker(() => 0), pretendWorker(() => 1)];
  const counts: number[] = [];
  const judged = await judgeInWorkers(
    files,
    workers.map(({ worker }) => worker),
    (count) => counts.push(count),
  );
  expect(judged.map(({ file }) => file)).toEqual(files);
  expect(counts.at(-1)).toBe(100);
  expect(workers.every(({ state }) => state.isEnded)).toBe(true);
});

test("[I15] a worker that breaks ends the batch, and no worker is left running", async () => {
  const workers = [pretendWorker(() => 0), pretendWorker(() => 0, "42.json")];
  const batch = judgeInWorkers(
    files,
    workers.map(({ worker }) => worker),
    () => undefined,
  );
  await expect(batch).rejects.toThrow("broke");
  expect(workers.every(({ state }) => state.isEnded)).toBe(true);
});
