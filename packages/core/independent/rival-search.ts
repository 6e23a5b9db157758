import nlopt from "nlopt-js";
import {
  bruteReserve,
  errorsOf,
  type FourPins,
  leastRoom,
  type SampledJob,
  sampleTravel,
  survives,
} from "./brute-reserve.ts";
import type { MadeUpJob, Ranges } from "./made-up-jobs.ts";

/** A placement by its brute-force reserve [mm]. */
export interface Rival {
  readonly pins: FourPins;
  readonly reserve: number;
}

/** The nearest place that the brackets allow. */
function snapped({ low, high, step }: Ranges, pins: readonly number[]): FourPins {
  return pins.map((value, j) => {
    const [from, to, by] = [low[j] as number, high[j] as number, step[j] as number];
    const place = by === 0 ? value : from + by * Math.round((value - from) / by);
    return Math.min(to, Math.max(from, place));
  }) as unknown as FourPins;
}

const corners = errorsOf([-1, 1]);
const throughout = errorsOf([-1, 0, 1]);

/** The brute-force reserve at its most careful: dense travel, errors inside the box as well. */
export const carefulReserve = (job: MadeUpJob, pins: FourPins): number =>
  bruteReserve(sampleTravel(job.brute, 121), pins, throughout, 0.01);

const better = (a: Rival | null, b: Rival): Rival => (a === null || b.reserve > a.reserve ? b : a);

/** One of the package's optimisers on the brute-force reserve; pins as shares of their range, 0 … 1. */
function optimise(
  sampled: SampledJob,
  ranges: Ranges,
  algorithm: string,
  evaluations: number,
  start: FourPins,
): Rival {
  const free = [0, 1, 2, 3].filter((j) => (ranges.high[j] as number) > (ranges.low[j] as number));
  const from = (j: number) => ranges.low[j] as number;
  const size = (j: number) => (ranges.high[j] as number) - (ranges.low[j] as number);
  let best: Rival | null = null;
  const optimiser = new nlopt.Optimize(nlopt.Algorithm[algorithm] as number, free.length);
  optimiser.setMaxObjective((x) => {
    const place = [...start] as number[];
    free.forEach((j, k) => {
      place[j] = from(j) + size(j) * Math.min(1, Math.max(0, x[k] as number));
    });
    const pins = snapped(ranges, place);
    const reserve = bruteReserve(sampled, pins, corners, 0.2);
    best = better(best, { pins, reserve });
    return reserve;
  }, 1e-3);
  optimiser.setLowerBounds(free.map(() => 0));
  optimiser.setUpperBounds(free.map(() => 1));
  optimiser.setMaxeval(evaluations);
  optimiser.optimize(free.map((j) => Math.min(1, Math.max(0, ((start[j] as number) - from(j)) / size(j)))));
  nlopt.GC.flush();
  if (best === null) throw new Error(`an evaluation by ${algorithm} expected, none made`);
  return best;
}

/** Every place of a grid in `ranges` that survives more than the best so far. Grids are refined about the best. */
function gridSearch(sampled: SampledJob, ranges: Ranges, levels: number): Rival | null {
  let best: Rival | null = null;
  let near: FourPins | null = null;
  for (let level = 0; level < levels; level++) {
    const shrink = 0.45 ** level;
    const places = [0, 1, 2, 3].map((j) => {
      const [low, high, step] = [ranges.low[j] as number, ranges.high[j] as number, ranges.step[j] as number];
      if (high === low) return [low];
      if (step > 0)
        return Array.from({ length: Math.round((high - low) / step) + 1 }, (_, i) => low + step * i);
      const reach = (high - low) * shrink;
      const middle = near === null ? (low + high) / 2 : near[j as 0 | 1 | 2 | 3];
      const start = Math.max(low, Math.min(high - reach, middle - reach / 2));
      return Array.from({ length: 6 }, (_, i) => start + (reach * i) / 5);
    }) as [number[], number[], number[], number[]];
    let leastBroken = Number.NEGATIVE_INFINITY;
    for (const a of places[0]) {
      for (const b of places[1]) {
        for (const c of places[2]) {
          for (const d of places[3]) {
            const pins: FourPins = [a, b, c, d];
            const beat = best === null ? 0 : best.reserve;
            if (beat <= 0) {
              const room = leastRoom(sampled, pins, leastBroken);
              if (room < 0) {
                if (room > leastBroken) [leastBroken, near] = [room, pins];
                continue;
              }
            }
            if (!survives(sampled, pins, Math.max(0, beat) + 0.05, corners)) continue;
            best = { pins, reserve: bruteReserve(sampled, pins, corners, 0.2) };
            near = pins;
          }
        }
      }
    }
    if (near === null && best !== null) near = best.pins;
  }
  return best;
}

/**
 * The best placement that other people's optimisers and a plain grid find on the brute-force reserve, knowing
 * nothing of the core's answer (`unaided`); and the best of a climb from there and of one from `answer` (`best`),
 * since no better place may lie near the answer either. Null when they find nothing that keeps every limit.
 */
export async function rivalSearch(
  job: MadeUpJob,
  answer: FourPins | null,
): Promise<{ readonly unaided: Rival | null; readonly best: Rival | null }> {
  await nlopt.ready;
  const coarse = sampleTravel(job.brute, 13);
  let found: Rival | null = null;
  for (const ranges of job.choices) {
    const middle = snapped(
      ranges,
      ranges.low.map((low, j) => (low + (ranges.high[j] as number)) / 2),
    );
    const isFree = ranges.step.every((step) => step === 0);
    if (isFree) {
      found = better(found, optimise(coarse, ranges, "GN_DIRECT_L", 130, middle));
      found = better(found, optimise(coarse, ranges, "GN_CRS2_LM", 220, middle));
    }
    const onGrid = gridSearch(coarse, ranges, isFree ? 4 : 3);
    if (onGrid !== null) found = better(found, onGrid);
  }
  const climbs = (start: FourPins): Rival => {
    let top: Rival = { pins: start, reserve: carefulReserve(job, start) };
    for (const ranges of job.choices) {
      if (ranges.step.some((step) => step > 0)) continue;
      const { pins } = optimise(coarse, ranges, "LN_SBPLX", 100, start);
      top = better(top, { pins, reserve: carefulReserve(job, pins) });
    }
    return top;
  };
  const unaided = found === null ? null : climbs(found.pins);
  const nearAnswer = answer === null ? null : climbs(answer);
  const best = nearAnswer === null ? unaided : better(unaided, nearAnswer);
  const fitting = (rival: Rival | null) => (rival === null || rival.reserve < 0 ? null : rival);
  return { unaided: fitting(unaided), best: fitting(best) };
}
