import { placementOf, reserveOf } from "../src/placement/reserve.ts";
import { prepared, reach } from "./example-job.ts";

/** How one general-purpose optimiser did. Time [ms] until it first saw the reserve wanted; null when the cap came first. */
export interface OptimiserRun {
  readonly name: string;
  readonly timeMs: number | null;
  readonly evaluations: number;
  readonly best: number;
}

type Nlopt = typeof import("nlopt-js").default;

const capSeconds = 4;
/** The library's random numbers go on from run to run, so that three runs are three tries, the same each day. */
const tries = 3;
const methods = [
  { name: "controlled random search, then simplex", global: "GN_CRS2_LM", local: "LN_SBPLX" },
  { name: "divided rectangles, then simplex", global: "GN_DIRECT_L", local: "LN_SBPLX" },
  { name: "evolution strategy, then simplex", global: "GN_ISRES", local: "LN_SBPLX" },
];

function bounds(): { low: number[]; high: number[]; middle: number[] } {
  const spans = [...reach.postPin, ...reach.leafPin].flatMap((site) => [
    site.along,
    "out" in site ? site.out : site.off,
  ]);
  const low = spans.map((span) => span.from);
  const high = spans.map((span) => span.to);
  return { low, high, middle: low.map((from, j) => 0.5 * (from + (high[j] as number))) };
}

/**
 * Lets NLopt's global methods look for `wanted` reserve [m] with our own `reserveOf` as the objective. Each
 * global method spends a share of its evaluations, then a local one polishes its best point, in rounds that
 * spend twice as much each time.
 */
export async function runOptimisers(wanted: number): Promise<OptimiserRun[]> {
  // Loaded only now: while it loads it wants the thread for itself, and complains when it waits.
  const { default: nlopt } = await import("nlopt-js");
  await nlopt.ready;
  return methods.map(({ name, global, local }) => {
    const runs = Array.from({ length: tries }, () => runOne(nlopt, name, global, local, wanted));
    const slowness = (run: OptimiserRun) => run.timeMs ?? Number.POSITIVE_INFINITY;
    runs.sort((a, b) => slowness(a) - slowness(b));
    return runs[(tries - 1) / 2] as OptimiserRun;
  });
}

function runOne(nlopt: Nlopt, name: string, global: string, local: string, wanted: number): OptimiserRun {
  const { low, high, middle } = bounds();
  const start = performance.now();
  let evaluations = 0;
  let reachedAt: number | null = null;
  let best = Number.NEGATIVE_INFINITY;
  let bestPins = middle;
  const spent = () => performance.now() - start > 1000 * capSeconds;
  const objective = (pins: ArrayLike<number>): number => {
    // The library offers no way to stop early: what follows the answer costs next to nothing.
    if (reachedAt !== null || spent()) return 0;
    evaluations++;
    const reserve = reserveOf(prepared, placementOf(Float64Array.from(pins), 0)).reserve;
    if (reserve > best) {
      best = reserve;
      bestPins = Array.from(pins);
    }
    if (reserve >= wanted) reachedAt = performance.now() - start;
    return reserve;
  };
  const optimise = (method: string, from: readonly number[], evals: number): void => {
    const optimiser = new nlopt.Optimize(nlopt.Algorithm[method], 4);
    optimiser.setMaxObjective(objective, 1e-7);
    optimiser.setLowerBounds(low);
    optimiser.setUpperBounds(high);
    optimiser.setMaxeval(evals);
    optimiser.optimize(from);
    nlopt.GC.flush();
  };
  for (let budget = 1000; reachedAt === null && !spent(); budget *= 2) {
    optimise(global, middle, budget);
    if (reachedAt === null) optimise(local, bestPins, budget);
  }
  return { name, timeMs: reachedAt, evaluations, best };
}
