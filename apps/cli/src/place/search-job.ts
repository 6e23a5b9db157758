import {
  type Job,
  joinedMap,
  type MapSize,
  type PlaceDocument,
  type PlaceLeafDocument,
  withRanks,
} from "@pintle/job";
import { startProgress } from "../batch/progress.ts";
import { runInWorkers } from "../batch/worker-pool.ts";
import {
  type SearchKind,
  searchResult,
  startWorkers,
  type WorkerResult,
  type WorkerTask,
} from "../batch/worker-tasks.ts";
import type { PlaceSettings } from "../operations.ts";
import type { Outside } from "../outside.ts";

/** What a search is asked for on the command line. */
export interface SearchSettings extends PlaceSettings {
  readonly everyRam: boolean;
  readonly map?: MapSize;
  readonly workers?: number;
}

type SearchTask = WorkerTask<SearchKind>;
type SearchResult = WorkerResult<SearchKind>;

/** Less work than so many searches of a leaf or a ram is done before workers have started and read their code. */
const searchesWorthWorkers = 32;

/** A position of a map takes this share of the time of a search; a task of a map holds about a search's worth. */
const positionShare = 0.1;

/**
 * Searches every leaf of a job, in parts: here when it is little, spread over workers when it is much. The parts
 * are the same either way, and so is the document.
 */
export async function searchJob(
  job: Job,
  settings: SearchSettings,
  outside: Outside,
): Promise<PlaceDocument> {
  const tasks = job.leaves.map((_, leaf) => leafTasks(job, leaf, settings));
  const results = await runTasks(tasks.flat(), settings.workers, outside);
  let from = 0;
  const leaves = tasks.map(({ length }) => {
    from += length;
    return leafDocument(results.slice(from - length, from), settings);
  });
  return { leaves };
}

function leafTasks(job: Job, leaf: number, { best, everyRam, map }: SearchSettings): SearchTask[] {
  const rams = everyRam ? (job.rams ?? []) : [];
  return [
    { kind: "placeLeaf", job, leaf, settings: best === undefined ? {} : { best } },
    ...rams.map((_, ram): SearchTask => ({ kind: "rankRam", job, leaf, ram })),
    ...(map === undefined ? [] : mapTasks(job, leaf, map)),
  ];
}

function mapTasks(job: Job, leaf: number, size: MapSize): SearchTask[] {
  const rowsAtOnce = Math.max(1, Math.round(1 / (positionShare * size.columns)));
  return Array.from({ length: Math.ceil(size.rows / rowsAtOnce) }, (_, part) => {
    const fromRow = part * rowsAtOnce;
    const rows = { fromRow, toRow: Math.min(size.rows, fromRow + rowsAtOnce) };
    return { kind: "mapLeaf", job, leaf, size, rows };
  });
}

async function runTasks(
  tasks: readonly SearchTask[],
  workers: number | undefined,
  { operations, cores, showsProgress }: Outside,
): Promise<SearchResult[]> {
  const progress = await startProgress("searches", tasks.length, showsProgress);
  let done = 0;
  const onDone = () => {
    done += 1;
    progress.update(done);
  };
  const count = Math.min(workers ?? (tasks.length < searchesWorthWorkers ? 1 : cores), tasks.length);
  try {
    if (count > 1) return await runInWorkers(tasks, startWorkers<SearchKind>(count), onDone);
    return tasks.map((task) => {
      const result = searchResult(task, operations);
      onDone();
      return result;
    });
  } finally {
    progress.stop();
  }
}

/** The parts of one leaf put together, as the job package does it in one go. */
function leafDocument(results: readonly SearchResult[], { everyRam }: SearchSettings): PlaceLeafDocument {
  const [placed] = results.flatMap((result) => (result.kind === "placeLeaf" ? [result.value] : []));
  const ranks = results.flatMap((result) => (result.kind === "rankRam" ? [result.value] : []));
  const map = joinedMap(results.flatMap((result) => (result.kind === "mapLeaf" ? [result.value] : [])));
  if (placed === undefined) throw new Error("a search came back without its leaf");
  const ranked = everyRam ? withRanks(placed, ranks) : placed;
  return map === null ? ranked : { ...ranked, map };
}
