import { placementOf, reserveOf } from "../src/placement/reserve.ts";
import { prepared, reach } from "./example-job.ts";

/** What the grid found. `floor` is the best reserve seen [m]; no placement in reach has more than `ceiling`. */
export interface GridResult {
  readonly floor: number;
  readonly ceiling: number;
  readonly evaluations: number;
}

/**
 * How much a broken limit's slack can change for a metre of error in every pin coordinate at once: each pin moves
 * by √2 of it, and a point of the ram beyond a pin by somewhat more than that pin.
 */
const slackSteepness = 4;

/** The most that any placement within ±half of this one can have as reserve. */
function ceilingAround(pins: Float64Array, half: number): { reserve: number; ceiling: number } {
  const { feasible, reserve, asShareOfLimit } = reserveOf(prepared, placementOf(pins, 0));
  // A feasible reserve is the distance to the nearest failing placement: it moves 1 mm for 1 mm of pin.
  if (feasible) return { reserve, ceiling: reserve + half };
  return { reserve, ceiling: asShareOfLimit ? half : half + reserve / slackSteepness };
}

/**
 * The search by brute force: an even grid over the reach, `coarse` apart [m]; then every point that may still
 * have something better beside it is parted into points half as far apart, down to `fine`.
 */
export function gridSearch(coarse: number, fine: number): GridResult {
  const [post, leaf] = [reach.postPin[0], reach.leafPin[0]];
  if (post === undefined || leaf === undefined) throw new RangeError("reach: expected a site for each pin");
  let half = coarse / 2;
  let points: Float64Array[] = [new Float64Array(4)];
  for (const [j, { from, to }] of [post.along, post.out, leaf.along, leaf.off].entries()) {
    const count = Math.ceil((to - from) / coarse);
    const step = (to - from) / count;
    points = points.flatMap((point) =>
      Array.from({ length: count }, (_, i) => {
        const next = point.slice();
        next[j] = from + (i + 0.5) * step;
        return next;
      }),
    );
  }
  let best = Number.NEGATIVE_INFINITY;
  let evaluations = 0;
  for (;;) {
    const looked = points.map((pins) => ({ pins, ...ceilingAround(pins, half) }));
    evaluations += looked.length;
    for (const { reserve } of looked) best = Math.max(best, reserve);
    const open = looked.filter(({ ceiling }) => ceiling > best);
    if (half <= fine / 2) {
      return { floor: best, ceiling: Math.max(best, ...open.map(({ ceiling }) => ceiling)), evaluations };
    }
    half /= 2;
    points = open.flatMap(({ pins }) => sixteenAround(pins, half));
  }
}

function sixteenAround(pins: Float64Array, half: number): Float64Array[] {
  return Array.from({ length: 16 }, (_, corner) =>
    pins.map((value, j) => value + ((corner >> j) & 1 ? half : -half)),
  );
}
