import { type MessagePort, Worker } from "node:worker_threads";
import type { Job, MapDocument, MapRows, MapSize, PlaceLeafDocument, RamRankDocument } from "@pintle/job";
import type { Operations, PlaceSettings } from "../operations.ts";
import { type JudgedFile, judgeFile } from "./judged-file.ts";
import type { PoolWorker } from "./worker-pool.ts";

/** What a worker can be asked to do; plain data both ways. */
export interface WorkerTasks {
  /** Several files at once: one by one, handing over would cost as much as judging. */
  readonly judge: { readonly files: readonly string[]; readonly inFull: boolean };
  readonly placeLeaf: { readonly job: Job; readonly leaf: number; readonly settings: PlaceSettings };
  readonly rankRam: { readonly job: Job; readonly leaf: number; readonly ram: number };
  readonly mapLeaf: {
    readonly job: Job;
    readonly leaf: number;
    readonly size: MapSize;
    readonly rows: MapRows;
  };
}

export interface WorkerResults {
  readonly judge: readonly JudgedFile[];
  readonly placeLeaf: PlaceLeafDocument;
  readonly rankRam: RamRankDocument | null;
  readonly mapLeaf: MapDocument | null;
}

export type WorkerTask<Kind extends keyof WorkerTasks = keyof WorkerTasks> = {
  readonly [K in Kind]: { readonly kind: K } & WorkerTasks[K];
}[Kind];

export type WorkerResult<Kind extends keyof WorkerTasks = keyof WorkerTasks> = {
  readonly [K in Kind]: { readonly kind: K; readonly value: WorkerResults[K] };
}[Kind];

/** The worker's side of the pool: does each task that comes and answers with its result. */
export function serveTasks(port: MessagePort, operations: Operations): void {
  port.on("message", async (task: WorkerTask) => port.postMessage(await resultOf(task, operations)));
}

async function resultOf(task: WorkerTask, operations: Operations): Promise<WorkerResult> {
  if (task.kind !== "judge") return searchResult(task, operations);
  const value: JudgedFile[] = [];
  for (const file of task.files) value.push(await judgeFile(file, operations.check, task.inFull));
  return { kind: "judge", value };
}

export type SearchKind = Exclude<keyof WorkerTasks, "judge">;

/** A part of a search, done where this is called. */
export function searchResult(
  task: WorkerTask<SearchKind>,
  { placeLeaf, rankRam, mapLeaf }: Operations,
): WorkerResult<SearchKind> {
  switch (task.kind) {
    case "placeLeaf":
      return { kind: "placeLeaf", value: placeLeaf(task.job, task.leaf, task.settings) };
    case "rankRam":
      return { kind: "rankRam", value: rankRam(task.job, task.leaf, task.ram) };
    case "mapLeaf":
      return { kind: "mapLeaf", value: mapLeaf(task.job, task.leaf, task.size, task.rows) };
  }
}

/** The bundle is one file: started as a worker it serves tasks instead of reading a command line. */
export function startWorkers<Kind extends keyof WorkerTasks>(
  count: number,
): PoolWorker<WorkerTask<Kind>, WorkerResult<Kind>>[] {
  return Array.from({ length: count }, () => new Worker(new URL(import.meta.url)));
}
