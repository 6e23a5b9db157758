// `npm run bench`: the table of speeds, on this machine, in this run. Started as a worker it searches the catalogue.
import { spawnSync } from "node:child_process";
import { availableParallelism } from "node:os";
import { fileURLToPath } from "node:url";
import { isMainThread, parentPort } from "node:worker_threads";
import type { Placement } from "../src/linkage/pins.ts";
import { reserveOf } from "../src/placement/reserve.ts";
import { bestPlacement } from "../src/search/best-placement.ts";
import type { SearchResult } from "../src/search/search-result.ts";
import { disagreements } from "./c-agreement.ts";
import { caseAsNumbers } from "./c-case.ts";
import type { KernelTask } from "./c-kernel.ts";
import { buildKernel } from "./c-kernel.ts";
import { CatalogueWorkers, catalogue, searchCatalogue, serveCatalogue } from "./catalogue.ts";
import { timeCommandLine } from "./command-line.ts";
import { placement, prepared, reach } from "./example-job.ts";
import { runOptimisers } from "./global-optimiser.ts";
import { gridSearch } from "./grid-search.ts";
import { seededNumbers } from "./invented-rams.ts";
import { machineLine } from "./machine.ts";
import { swingSum } from "./swing-and-limits.ts";
import type { Row } from "./table.ts";
import { printTable, shownRatio, shownTime } from "./table.ts";
import type { Timing } from "./timing.ts";
import { timeRuns, timeTask, timingOf } from "./timing.ts";

const script = new URL(import.meta.url);

/** Printed by a process that only searches once. */
const coldSearchFlag = "--one-cold-search";

const search = (): SearchResult => bestPlacement(prepared, reach);

function row(what: string, targetMs: number, timing: Timing): Row {
  return [
    what,
    `≤ ${shownTime(targetMs)}`,
    shownTime(timing.median),
    shownTime(timing.p95),
    shownRatio(timing.median / targetMs),
  ];
}

/** Placements spread over the reach from a seed, most of which break something. */
function strewnPlacements(count: number): Placement[] {
  const next = seededNumbers(1357);
  const within = ({ from, to }: { readonly from: number; readonly to: number }) =>
    from + (to - from) * next();
  return Array.from({ length: count }, () => {
    const [post, leaf] = [reach.postPin[0], reach.leafPin[0]];
    if (post === undefined || leaf === undefined) throw new RangeError("reach: expected a site for each pin");
    return {
      postPin: { along: within(post.along), out: within(post.out) },
      leafPin: { along: within(leaf.along), off: within(leaf.off) },
      rise: reach.rise,
    };
  });
}

function coldSearches(count: number): Timing {
  const samples = Array.from({ length: count }, () => {
    const child = spawnSync(process.execPath, [fileURLToPath(script), coldSearchFlag], { encoding: "utf8" });
    if (child.status !== 0) throw new Error(`a cold search ended with ${child.status}: ${child.stderr}`);
    return Number(child.stdout);
  });
  return timingOf(samples);
}

async function catalogueRows(): Promise<Row[]> {
  const rows: Row[] = [];
  const alone = searchCatalogue();
  const oneCore = await timeRuns(() => void searchCatalogue(), 5);
  const fitting = alone.filter((reserve) => reserve !== null).length;
  rows.push(row(`search over ${catalogue.length} rams, one core (${fitting} fit)`, 5000, oneCore));
  const cores = availableParallelism();
  for (let workers = 2; workers <= Math.min(cores, 8); workers *= 2) {
    const pool = new CatalogueWorkers(workers, script);
    const together = await pool.search();
    if (together.some((reserve, i) => reserve !== alone[i])) throw new Error("workers found other reserves");
    await pool.search();
    const timing = await timeRuns(async () => void (await pool.search()), 5);
    await pool.end();
    const gain = shownRatio(oneCore.median / timing.median);
    rows.push(row(`the same, ${workers} workers: ${gain} faster than one core`, 5000 / workers, timing));
  }
  return rows;
}

async function commandLineRows(bundle: string): Promise<Row[]> {
  const timings = await timeCommandLine(bundle);
  if (timings === null) return [];
  const { coldStart, nodeAlone, jobs, batch } = timings;
  const rows = [row(`pintle check, cold start (Node alone: ${shownTime(nodeAlone.median)})`, 300, coldStart)];
  for (const { workers, timing } of batch) {
    const perCore = (ms: number) => `${Math.round(jobs / (ms / 1000) / workers)} /s`;
    const ratio = shownRatio(jobs / (timing.median / 1000) / workers / 1000);
    const what = `pintle check, ${jobs} jobs: jobs per second and core, ${workers} worker${workers > 1 ? "s" : ""}`;
    rows.push([what, "≥ 1000 /s", perCore(timing.median), perCore(timing.p95), ratio]);
  }
  return rows;
}

async function main(bundle: string | undefined): Promise<void> {
  process.stdout.write(`Pintle benchmarks: ${machineLine()}\n\n`);
  const cold = coldSearches(5);
  const found = search();
  if (found.status !== "found") throw new Error(`search ended as ${found.status}: expected a placement`);
  const swing = await timeTask(() => void swingSum(found.placement), 1500);
  const reserve = await timeTask(() => void reserveOf(prepared, found.placement), 1500);
  const searchTime = await timeTask(() => void search(), 1500);
  const rows: Row[] = [
    row("swing of one leaf: 91 angles, all limits, a pier", 0.05, swing),
    row("reserve of one placement that keeps every limit", 1, reserve),
    row("placement search, 200 × 240 × 800 × 60 mm, a pier", 150, searchTime),
    row("the same, first search of a process", 150, cold),
    ...(await catalogueRows()),
    ...(bundle === undefined ? [] : await commandLineRows(bundle)),
  ];
  printTable("Against the targets", ["", "target", "median", "95th pct", "÷ target"], rows);

  const compared = compareWithC(found, { swing, reserve, search: searchTime });
  printTable(
    "Same algorithms in C at -O2, same answers to 1e-6",
    ["", "C", "TypeScript", "TS ÷ C", "target"],
    compared,
  );
  await compareSearches(found, searchTime);
}

function compareWithC(found: SearchResult & { status: "found" }, ours: Record<KernelTask, Timing>): Row[] {
  const placements = [found.placement, placement, ...strewnPlacements(60)];
  const built = buildKernel(caseAsNumbers(prepared, reach, placements));
  if (!built.ok) {
    process.stdout.write(`Not compared with C: ${built.why}\n\n`);
    return [];
  }
  const { kernel } = built;
  const apart = disagreements(kernel.answers(), placements, found);
  const samples = { swing: 20000, reserve: 5000, search: 200 };
  return (["swing", "reserve", "search"] as const).map((task) => {
    const [difference] = apart[task];
    if (difference !== undefined) {
      // Said, and told to the shell, but the rest of the table still stands.
      process.stderr.write(`c/ does not follow src/ any more. ${task}: ${difference}\n`);
      process.exitCode = 1;
      return [task, "other answer", shownTime(ours[task].median), "—", "≤ 2 ×"];
    }
    const theirs = kernel.time(task, samples[task]);
    const ratio = shownRatio(ours[task].median / theirs.median);
    return [task, shownTime(theirs.median), shownTime(ours[task].median), ratio, "≤ 2 ×"];
  });
}

async function compareSearches(found: SearchResult & { status: "found" }, proved: Timing): Promise<void> {
  const mm = (metres: number) => `${(metres * 1000).toFixed(2)} mm`;
  // Like with like: the optimisers prove nothing, so ours is timed to the same reserve too.
  const wanted = found.reserve - 5e-4;
  const ours = await timeTask(() => void bestPlacement(prepared, reach, { enough: wanted }), 500);
  const early = bestPlacement(prepared, reach, { enough: wanted });
  const rows: Row[] = [
    [
      "ours, stopped there",
      early.status === "found" ? mm(early.reserve) : "—",
      shownTime(ours.median),
      "1 ×",
      "",
    ],
    [
      "ours, to the proof",
      mm(found.reserve),
      shownTime(proved.median),
      shownRatio(proved.median / ours.median),
      "",
    ],
  ];
  for (const { name, timeMs, evaluations, best } of await runOptimisers(wanted)) {
    const label = `${name}, ${evaluations} evaluations`;
    const ratio = timeMs === null ? "not reached" : shownRatio(timeMs / ours.median);
    rows.push([label, mm(best), timeMs === null ? "—" : shownTime(timeMs), ratio, "≥ 20 ×"]);
  }
  const start = performance.now();
  const grid = gridSearch(0.02, 0.0005);
  const gridMs = performance.now() - start;
  const same = grid.floor <= found.ceiling && grid.ceiling >= found.reserve;
  if (!same) throw new Error(`grid: ${mm(grid.floor)} to ${mm(grid.ceiling)}, search: ${mm(found.reserve)}`);
  rows.push([
    `grid, coarse to fine, ${grid.evaluations} evaluations`,
    `${mm(grid.floor)} to ${mm(grid.ceiling)}`,
    shownTime(gridMs),
    shownRatio(gridMs / ours.median),
    "same answer",
  ]);
  const title = `To a reserve of ${mm(wanted)}, 0.5 mm below the best, by other means`;
  printTable(title, ["", "reserve", "time", "÷ ours", "target"], rows);
}

if (!isMainThread && parentPort !== null) serveCatalogue(parentPort);
else if (process.argv.includes(coldSearchFlag)) {
  const start = performance.now();
  search();
  process.stdout.write(String(performance.now() - start));
} else {
  // Caught here, because nlopt-js would print its whole source above any error that is not.
  await main(process.argv[2]).catch((error: unknown) => {
    process.stderr.write(`${error instanceof Error ? error.stack : error}\n`);
    process.exitCode = 1;
  });
}
