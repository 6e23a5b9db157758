import type { Prepared } from "../placement/limits.ts";
import { prepare } from "../placement/limits.ts";
import type { LeafPinSite } from "../placement/reach.ts";
import { pinsOf } from "../placement/reserve.ts";
import type { Situation } from "../placement/situation.ts";
import { bestPlacement } from "./best-placement.ts";
import { scoreOf } from "./climb.ts";
import { searchCase } from "./search-case.ts";
import type { Watch } from "./search-result.ts";

/** Best reserve over all leaf pins for each post-pin position of a grid (rule G14). Metres, fixed frame. */
export interface ReserveMap {
  readonly along: readonly number[];
  readonly out: readonly number[];
  /** Row by row, `out` slow and `along` fast. Negative: about how far from fitting; NaN: no leaf pin in reach. */
  readonly reserve: Float64Array;
  /** The leaf pin that gives it, same order; null where nothing fits. */
  readonly leafPin: readonly ({ readonly along: number; readonly off: number } | null)[];
  /** False when the signal stopped it; what is not computed is NaN. */
  readonly complete: boolean;
}

/** The window and spacing of a map: `columns` × `rows` positions including both ends, at least 2 each. */
export interface MapGrid {
  readonly along: readonly [number, number];
  readonly out: readonly [number, number];
  readonly columns: number;
  readonly rows: number;
  /** Only these rows of the grid, the first included and the last not; so that workers can share a map. */
  readonly part?: { readonly fromRow: number; readonly toRow: number };
}

/**
 * The map of where the post pin may go (rule G14): the best reserve over all leaf pins at each position.
 *
 * Each position is a search of its own, to 0.5 mm. Throws when a grid has fewer than two columns or rows.
 *
 * ### Example
 *   const { situation, reach } = workedExample;
 *   const grid = { along: [-0.2, -0.1] as const, out: [0.1, 0.2] as const, columns: 3, rows: 3 };
 *   const map = reserveMap(situation, reach.leafPin, 0, grid);
 *   expect(map.reserve).toHaveLength(9);
 *   expect(map.reserve[4]).toBeGreaterThan(0.02);
 *   const middle = reserveMap(situation, reach.leafPin, 0, { ...grid, part: { fromRow: 1, toRow: 2 } });
 *   expect(middle.reserve).toEqual(map.reserve.slice(3, 6));
 */
export function reserveMap(
  situation: Situation | Prepared,
  leafPin: readonly LeafPinSite[],
  rise: number,
  grid: MapGrid,
  watch: Watch = {},
): ReserveMap {
  if (!(grid.columns >= 2 && grid.rows >= 2)) {
    throw new RangeError(`map of ${grid.columns} × ${grid.rows}: expected at least 2 × 2 positions`);
  }
  const prepared = "checks" in situation ? situation : prepare(situation);
  const search = searchCase(prepared, rise);
  const spread = ([from, to]: readonly [number, number], count: number) =>
    Array.from({ length: count }, (_, i) => from + ((to - from) * i) / (count - 1));
  const along = spread(grid.along, grid.columns);
  const out = spread(grid.out, grid.rows).slice(grid.part?.fromRow, grid.part?.toRow);
  const reserve = new Float64Array(along.length * out.length).fill(Number.NaN);
  const pins: ReserveMap["leafPin"][number][] = new Array(reserve.length).fill(null);
  const fixed = (value: number) => ({ from: value, to: value, step: null });
  let at = 0;
  for (const y of out) {
    for (const x of along) {
      if (watch.signal?.aborted) return { along, out, reserve, leafPin: pins, complete: false };
      const reach = { postPin: [{ bracket: "", along: fixed(x), out: fixed(y) }], leafPin, rise };
      const found = bestPlacement(prepared, reach, { tolerance: 5e-4 });
      if (found.status === "found") {
        reserve[at] = found.reserve;
        pins[at] = found.placement.leafPin;
      } else if (found.status === "nothing-fits" && found.nearest !== null) {
        reserve[at] = scoreOf(search, pinsOf(found.nearest)).value;
      }
      at++;
    }
    watch.progress?.(at / reserve.length);
  }
  return { along, out, reserve, leafPin: pins, complete: true };
}
