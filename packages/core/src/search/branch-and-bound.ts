import { placementOf, reserveCeiling } from "../placement/reserve.ts";
import type { Pins } from "../placement/slack-function.ts";
import { orientationOf } from "../placement/slack-function.ts";
import type { Cell } from "./cell.ts";
import { halves, longestSide, middleOf, nearestPossible } from "./cell.ts";
import { Incumbent } from "./incumbent.ts";
import { limitRows } from "./limit-rows.ts";
import { greatestSlack, newRows } from "./linear-program.ts";
import { NodeHeap, type SearchNode } from "./node-heap.ts";
import type { SearchCase } from "./search-case.ts";
import type { SearchOptions, SearchResult } from "./search-result.ts";

/**
 * Boxes smaller than this are settled by their middle [m]: the reserve changes by at most 1 mm for 1 mm of
 * pin, so nothing in such a box is more than half of it better.
 */
const smallestBox = 1e-5;
/** Cells whose middle is climbed from before the proof begins; more would cost more than they save. */
const firstClimbs = 6;

const rows = newRows();
const half = new Float64Array(4);
const move = new Float64Array(4);
const nowhere = new Float64Array(4);

/** Best-first branch and bound over the cells; see `bestPlacement` for what it promises. */
export function branchAndBound(
  search: SearchCase,
  cells: readonly Cell[],
  options: SearchOptions,
): SearchResult {
  const maxBoxes = options.maxBoxes ?? 200_000;
  const enough = options.enough ?? Number.POSITIVE_INFINITY;
  const incumbent = new Incumbent(search);
  for (const cell of cells.slice(0, firstClimbs)) incumbent.climbFrom(cell, middleOf(cell));
  const heap = startingHeap(cells);
  const whole = heap.size;
  let settled = 0;
  let boxes = 0;
  for (let node = heap.pop(); node !== undefined; node = heap.pop()) {
    const reserve = incumbent.best?.reserve ?? null;
    // The boxes left over are not looked at, so all that is certain is the most that a reserve can be.
    if (reserve !== null && reserve >= enough) {
      options.progress?.(1);
      return answer(incumbent, reserveCeiling, boxes);
    }
    if (options.signal?.aborted) return stopped("aborted", incumbent, boxes);
    if (boxes >= maxBoxes) return stopped("box-limit", incumbent, boxes);
    const target = reserve === null ? 0 : reserve + toleranceAfter(boxes, options);
    const mayClimb = incumbent.climbs < firstClimbs + 2 + boxes / 16;
    const ceiling = ceilingOf(incumbent, node, target, mayClimb);
    boxes++;
    const longest = longestSide(node.cell);
    const isSmall = longest.length < smallestBox;
    if (ceiling >= target && isSmall) incumbent.offer(possibleMiddle(node.cell), node.cell);
    if (ceiling < target || isSmall) settled += node.share;
    else {
      const parts = halves(node.cell, longest.j);
      for (const cell of parts) heap.push({ ...node, cell, ceiling, share: node.share / parts.length });
    }
    if (boxes % 64 === 0) options.progress?.(Math.min(1, settled / whole));
  }
  options.progress?.(1);
  const best = incumbent.best?.reserve ?? 0;
  return answer(incumbent, best + toleranceAfter(boxes, options), boxes);
}

/**
 * Unless a tolerance is asked for, the search aims at 0.05 mm and settles for up to 0.45 mm where the optimum
 * is so flat that the finer proof would take too many boxes. Boxes dropped under a finer one stay dropped rightly.
 */
function toleranceAfter(boxes: number, options: SearchOptions): number {
  return options.tolerance ?? (boxes < 1500 ? 5e-5 : boxes < 6000 ? 2e-4 : 4.5e-4);
}

function startingHeap(cells: readonly Cell[]): NodeHeap {
  const heap = new NodeHeap();
  for (const cell of cells) {
    for (const side of [1, -1] as const) {
      if (sideIsPossible(cell, side)) heap.push({ cell, side, ceiling: Number.POSITIVE_INFINITY, share: 1 });
    }
  }
  return heap;
}

/**
 * A ceiling of the reserve inside a box, first order above `target` and a proof below it: less than `target`
 * means that nothing in the box reaches `target`. On the way it offers what looks better to the incumbent.
 */
function ceilingOf(incumbent: Incumbent, node: SearchNode, target: number, mayClimb: boolean): number {
  const { search } = incumbent;
  const { cell, side } = node;
  if (!sideIsPossible(cell, side)) return Number.NEGATIVE_INFINITY;
  const centre = middleOf(cell);
  for (let j = 0; j < 4; j++) half[j] = 0.5 * ((cell.high[j] as number) - (cell.low[j] as number));
  const functions = side === 1 ? search.functions.left : search.functions.right;
  const question = { functions, end: search.end, centre, half, target, tangentsOnly: false };
  if (!limitRows(question, rows)) return Number.NEGATIVE_INFINITY;
  const slack = greatestSlack(rows, half, move);
  if (slack < 0 || !mayClimb) return target + slack;
  // The program's own optimum is the likeliest place for something better in this box.
  for (let j = 0; j < 4; j++) {
    centre[j] = nearestPossible(cell, j, (centre[j] as number) + (move[j] as number));
  }
  if (orientationOf(centre) === side && looksBetter(search, centre, target))
    incumbent.climbFrom(cell, centre);
  return target + slack;
}

/** A cheap first-order look before a climb is paid for: tangents at the point itself, no lift. */
function looksBetter(search: SearchCase, pins: Pins, target: number): boolean {
  const functions = orientationOf(pins) === 1 ? search.functions.left : search.functions.right;
  limitRows({ functions, end: search.end, centre: pins, half: nowhere, target, tangentsOnly: true }, rows);
  for (let i = 0; i < rows.count; i++) {
    if ((rows.b[i] as number) < -1e-4 * (rows.w[i] as number)) return false;
  }
  return true;
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

const possibleMiddle = (cell: Cell): Pins =>
  middleOf(cell).map((value, j) => nearestPossible(cell, j, value));

function stopped(why: "aborted" | "box-limit", incumbent: Incumbent, boxes: number): SearchResult {
  const { best, search } = incumbent;
  return {
    status: "stopped",
    why,
    best: best === null ? null : placementOf(best.pins, search.rise),
    reserve: best?.reserve ?? null,
    boxes,
  };
}

function answer(incumbent: Incumbent, ceiling: number, boxes: number): SearchResult {
  const { best, nearest, search } = incumbent;
  if (best === null) {
    return {
      status: "nothing-fits",
      nearest: nearest === null ? null : placementOf(nearest, search.rise),
      boxes,
    };
  }
  return {
    status: "found",
    placement: placementOf(best.pins, search.rise),
    reserve: best.reserve,
    ceiling,
    cell: best.cell,
    boxes,
  };
}
