import { type Job, type PlaceDocument, withRanks } from "@pintle/job";
import { startProgress } from "../batch/progress.ts";
import { runInWorkers } from "../batch/worker-pool.ts";
import { startWorkers, type WorkerTask } from "../batch/worker-tasks.ts";
import type { PlaceSettings } from "../operations.ts";
import type { Outside } from "../outside.ts";

/** What a search is asked for on the command line. */
export interface SearchSettings extends PlaceSettings {
  readonly everyRam: boolean;
  readonly workers?: number;
}

/** Fewer searches than this are done before workers have started and read their code. */
const searchesWorthWorkers = 32;

type SearchTask = WorkerTask<"placeLeaf" | "rankRam">;

/** Searches every leaf of a job: here when it is little, spread over workers when it is much; the same either way. */
export async function searchJob(
  job: Job,
  { everyRam, workers, ...settings }: SearchSettings,
  outside: Outside,
): Promise<PlaceDocument> {
  const progress = await startProgress("searches", 100, outside.showsProgress);
  const tasks = searchTasks(job, settings, everyRam);
  const worthIt = tasks.length < searchesWorthWorkers ? 1 : outside.cores;
  const count = Math.min(workers ?? worthIt, tasks.length);
  try {
    if (count < 2) {
      return outside.operations.place(job, {
        ...settings,
        everyRam,
        progress: (share) => progress.update(100 * share),
      });
    }
    return await searchInWorkers(job, tasks, everyRam, count, progress.update);
  } finally {
    progress.stop();
  }
}

/** One for each leaf, then one for each leaf and ram. */
function searchTasks(job: Job, settings: PlaceSettings, everyRam: boolean): SearchTask[] {
  const rams = everyRam ? (job.rams ?? []) : [];
  return [
    ...job.leaves.map((_, leaf): SearchTask => ({ kind: "placeLeaf", job, leaf, settings })),
    ...job.leaves.flatMap((_, leaf) =>
      rams.map((_, ram): SearchTask => ({ kind: "rankRam", job, leaf, ram })),
    ),
  ];
}

async function searchInWorkers(
  job: Job,
  tasks: readonly SearchTask[],
  everyRam: boolean,
  count: number,
  onProgress: (percent: number) => void,
): Promise<PlaceDocument> {
  let done = 0;
  const results = await runInWorkers(tasks, startWorkers<SearchTask["kind"]>(count), () => {
    done += 1;
    onProgress((100 * done) / tasks.length);
  });
  const found = results.flatMap((result) => (result.kind === "placeLeaf" ? [result.value] : []));
  const ranks = results.flatMap((result) => (result.kind === "rankRam" ? [result.value] : []));
  const rams = job.rams?.length ?? 0;
  return {
    leaves: found.map((leaf, index) =>
      everyRam ? withRanks(leaf, ranks.slice(index * rams, (index + 1) * rams)) : leaf,
    ),
  };
}
