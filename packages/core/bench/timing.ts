import { Bench } from "tinybench";

/** Median and 95th percentile of one task [ms], and how many samples they rest on. */
export interface Timing {
  readonly median: number;
  readonly p95: number;
  readonly samples: number;
}

/** The value below which `share` of the sorted samples lie, nearest rank. */
function quantile(sorted: readonly number[], share: number): number {
  return sorted[Math.min(sorted.length - 1, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN;
}

/** Median and 95th percentile of samples in milliseconds; of fewer than twenty the latter is the worst. */
export function timingOf(samples: readonly number[]): Timing {
  const sorted = [...samples].sort((a, b) => a - b);
  return { median: quantile(sorted, 0.5), p95: quantile(sorted, 0.95), samples: sorted.length };
}

/** Times a synchronous task call by call, for at least `timeMs` and `iterations` calls after as much warming up. */
export async function timeTask(task: () => void, timeMs: number, iterations = 10): Promise<Timing> {
  const bench = new Bench({
    time: timeMs,
    iterations,
    warmupTime: timeMs / 2,
    warmupIterations: Math.ceil(iterations / 2),
    retainSamples: true,
    throws: true,
  });
  bench.add("task", task, { async: false });
  await bench.run();
  const result = bench.tasks[0]?.result;
  if (result === undefined || !("latency" in result) || result.latency.samples === undefined) {
    throw new Error(`tinybench ended as ${result?.state}: expected samples`);
  }
  return timingOf(result.latency.samples);
}

/** Times something that runs for itself, such as a process, `count` times. */
export async function timeRuns(run: () => Promise<void> | void, count: number): Promise<Timing> {
  const samples: number[] = [];
  for (let i = 0; i < count; i++) {
    const start = performance.now();
    await run();
    samples.push(performance.now() - start);
  }
  return timingOf(samples);
}
