import type { Placement } from "../linkage/pins.ts";
import type { Prepared } from "../placement/limits.ts";
import { prepare } from "../placement/limits.ts";
import type { Reach } from "../placement/reach.ts";
import { placementOf } from "../placement/reserve.ts";
import type { Situation } from "../placement/situation.ts";
import type { Pins } from "../placement/slack.ts";
import { orientationOf } from "../placement/slack.ts";
import type { Cell } from "./cell.ts";
import { cellsOf, halves, longestSide, nearestPossible } from "./cell.ts";
import { climb, scoreOf } from "./climb.ts";
import { limitRows } from "./limit-rows.ts";
import { greatestSlack, newRows } from "./linear-program.ts";
import { NodeHeap } from "./node-heap.ts";
import type { SearchCase } from "./search-case.ts";
import { searchCase } from "./search-case.ts";

/** How a long calculation is watched and stopped. `progress` receives the share done, 0 … 1, never falling. */
export interface Watch {
  readonly progress?: (share: number) => void;
  readonly signal?: { readonly aborted: boolean };
}

export interface SearchOptions extends Watch {
  /** How far below the true optimum the reserve found may lie [m]; default 0.2 mm. */
  readonly tolerance?: number;
  /** Boxes looked at before the search stops short; default 200,000. */
  readonly maxBoxes?: number;
  /** Stop as soon as a placement with at least this reserve is known [m]; for yes-or-no questions. */
  readonly enough?: number;
}

/** What a search found. */
export type SearchResult =
  | {
      readonly status: "found";
      readonly placement: Placement;
      readonly reserve: number;
      /** No placement in reach has a reserve above this [m]. */
      readonly ceiling: number;
      readonly cell: Cell;
      readonly boxes: number;
    }
  /** No placement in reach keeps every limit, to within 0.01 mm of pin position. `nearest` breaks least. */
  | { readonly status: "nothing-fits"; readonly nearest: Placement | null; readonly boxes: number }
  /** Stopped by the signal or at `maxBoxes` before the answer was certain. */
  | {
      readonly status: "stopped";
      readonly why: "aborted" | "box-limit";
      readonly best: Placement | null;
      readonly reserve: number | null;
      readonly boxes: number;
    };

/** Boxes smaller than this are not parted further [m]. */
const smallestBox = 1e-5;

/**
 * The placement with the largest reserve in reach (rule G12), to within `tolerance` of the true optimum.
 *
 * A branch and bound over boxes of placements: a box is dropped when the linear program of `limitRows` proves
 * that nothing in it survives errors of (best so far + tolerance). Climbs from a few starts give a good best
 * early; they do not touch the proof. Deterministic: no clock, no randomness.
 *
 * Frame: rule G1; metres. Misuse (a span that runs backwards) throws.
 *
 * ### Example
 *   const found = bestPlacement(workedExample.situation, workedExample.reach);
 *   expect(found.status).toBe("found");
 *   if (found.status === "found") expect(Math.abs(found.reserve - 0.025)).toBeLessThan(0.0005);
 */
export function bestPlacement(
  situation: Situation | Prepared,
  reach: Reach,
  options: SearchOptions = {},
): SearchResult {
  const prepared = "checks" in situation ? situation : prepare(situation);
  const search = searchCase(prepared, reach.rise);
  const cells = cellsOf(reach);
  // The leaf's own sweep depends on no pin: when it fouls, no placement can help.
  if (prepared.sweeps.some((sweep) => sweep.gap < prepared.situation.need.sweep)) {
    return { status: "nothing-fits", nearest: nearestMiss(search, cells), boxes: 0 };
  }
  return branchAndBound(search, cells, options);
}

function nearestMiss(search: SearchCase, cells: readonly Cell[]): Placement | null {
  let nearest: { pins: Pins; value: number } | null = null;
  for (const cell of cells.slice(0, 40)) {
    const { pins, score } = climb(search, cell, middleOf(cell));
    if (nearest === null || score.value > nearest.value) nearest = { pins, value: score.value };
  }
  return nearest === null ? null : placementOf(nearest.pins, search.rise);
}

const middleOf = (cell: Cell): Pins =>
  Float64Array.from(cell.low, (low, j) => 0.5 * (low + (cell.high[j] as number)));

function branchAndBound(search: SearchCase, cells: readonly Cell[], options: SearchOptions): SearchResult {
  const tolerance = options.tolerance ?? 2e-4;
  const maxBoxes = options.maxBoxes ?? 200_000;
  const enough = options.enough ?? Number.POSITIVE_INFINITY;
  const heap = new NodeHeap();
  const rows = newRows();
  const half = new Float64Array(4);
  const move = new Float64Array(4);
  let best: { pins: Pins; reserve: number; cell: Cell } | null = null;
  let missed: { pins: Pins; value: number } | null = null;
  let boxes = 0;
  let shown = 0;
  const offer = (pins: Pins, cell: Cell, score = scoreOf(search, pins)): void => {
    if (score.feasible) {
      if (best === null || score.value > best.reserve)
        best = { pins: pins.slice(), reserve: score.value, cell };
    } else if (missed === null || score.value > missed.value)
      missed = { pins: pins.slice(), value: score.value };
  };
  // A climb costs as much as many boxes, so climbs are kept to a share of them.
  let climbs = 0;
  const climbFrom = (cell: Cell, start: Pins): void => {
    climbs++;
    const { pins, score } = climb(search, cell, start);
    offer(pins, cell, score);
  };
  const known = (): typeof best => best;
  // Climbing from every cell's middle costs a few milliseconds each, so only while cells are few.
  for (const cell of cells.slice(0, 6)) climbFrom(cell, middleOf(cell));
  for (const cell of cells) {
    heap.push({ cell, side: 1, ceiling: Number.POSITIVE_INFINITY });
    heap.push({ cell, side: -1, ceiling: Number.POSITIVE_INFINITY });
  }
  let total = 0;
  let done = 0;
  const report = (): void => {
    const share = Math.min(1, done / Math.max(total, 1));
    if (share > shown) shown = share;
    options.progress?.(shown);
  };
  total = heap.size;
  for (let node = heap.pop(); node !== undefined; node = heap.pop()) {
    const reserve = known()?.reserve ?? null;
    if (reserve !== null && reserve >= enough) break;
    if (options.signal?.aborted || boxes >= maxBoxes) {
      const best = known();
      return {
        status: "stopped",
        why: options.signal?.aborted ? "aborted" : "box-limit",
        best: best === null ? null : placementOf(best.pins, search.rise),
        reserve: best?.reserve ?? null,
        boxes,
      };
    }
    boxes++;
    if (boxes % 64 === 0) report();
    done += node.share ?? 1;
    const { cell, side } = node;
    const target = reserve === null ? 0 : reserve + tolerance;
    const centre = middleOf(cell);
    for (let j = 0; j < 4; j++) half[j] = 0.5 * ((cell.high[j] as number) - (cell.low[j] as number));
    if (!sideIsPossible(cell, side)) continue;
    const functions = side === 1 ? search.functions.left : search.functions.right;
    if (!limitRows(functions, search.turns, centre, half, target, rows)) continue;
    const slack = greatestSlack(rows, half, move);
    if (slack < 0) continue;
    // The program's own optimum is the likeliest place for something better in this box.
    for (let j = 0; j < 4; j++)
      centre[j] = nearestPossible(cell, j, (centre[j] as number) + (move[j] as number));
    const mayClimb = climbs < 8 + boxes / 16 && orientationOf(centre) === side;
    if (mayClimb && looksBetter(search, centre, target, rows)) climbFrom(cell, centre);
    const longest = longestSide(cell);
    if (longest.length < smallestBox) continue;
    const share = (node.share ?? 1) / 2;
    done -= node.share ?? 1;
    for (const child of halves(cell, longest.j))
      heap.push({ cell: child, side, ceiling: target + slack, share });
  }
  options.progress?.(1);
  const final = known();
  if (final === null) {
    const miss = missed as { pins: Pins; value: number } | null;
    return {
      status: "nothing-fits",
      nearest: miss === null ? null : placementOf(miss.pins, search.rise),
      boxes,
    };
  }
  return {
    status: "found",
    placement: placementOf(final.pins, search.rise),
    reserve: final.reserve,
    ceiling: final.reserve + tolerance,
    cell: final.cell,
    boxes,
  };
}

/** Whether some placement of the cell has its thrust line on this side of the hinge with the leaf closed. */
function sideIsPossible(cell: Cell, side: 1 | -1): boolean {
  const range = (a: number, b: number): [number, number] => {
    const [al, ah] = [cell.low[a] as number, cell.high[a] as number];
    const [bl, bh] = [cell.low[b] as number, cell.high[b] as number];
    const products = [al * bl, al * bh, ah * bl, ah * bh];
    return [Math.min(...products), Math.max(...products)];
  };
  // orientation = sign(post along × leaf off − post out × leaf along), in interval arithmetic.
  const [firstLow, firstHigh] = range(0, 3);
  const [secondLow, secondHigh] = range(1, 2);
  return side === 1 ? firstHigh - secondLow >= 0 : firstLow - secondHigh < 0;
}

/** A cheap first-order look before a climb is paid for: tangents at the point itself, no lift. */
function looksBetter(
  search: SearchCase,
  pins: Pins,
  target: number,
  rows: ReturnType<typeof newRows>,
): boolean {
  const functions = orientationOf(pins) === 1 ? search.functions.left : search.functions.right;
  limitRows(functions, search.turns, pins, nowhere, target, rows, true);
  for (let i = 0; i < rows.count; i++)
    if ((rows.b[i] as number) < -1e-4 * (rows.w[i] as number)) return false;
  return true;
}

const nowhere = new Float64Array(4);
