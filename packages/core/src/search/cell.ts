import type { Reach, Span } from "../placement/reach.ts";

/**
 * A box of placements: the four pin coordinates between `low` and `high` [m], some only at steps counted
 * from `origin` (step 0 = anywhere). One cell for each pair of bracket choices.
 */
export interface Cell {
  readonly postBracket: string;
  readonly leafBracket: string;
  readonly low: Float64Array;
  readonly high: Float64Array;
  readonly origin: Float64Array;
  readonly step: Float64Array;
}

/** Rounding room when a value is matched to a step: a nanometre. */
const stepRoom = 1e-9;

/**
 * Every pair of bracket choices of a reach as a cell (rule G13).
 *
 * Throws when a span runs backwards or a step is not positive: the job file refuses those, so it is misuse.
 */
export function cellsOf(reach: Reach): Cell[] {
  const cells: Cell[] = [];
  for (const post of reach.postPin) {
    for (const leaf of reach.leafPin) {
      const spans = [post.along, post.out, leaf.along, leaf.off];
      for (const span of spans) checkSpan(span);
      const cell: Cell = {
        postBracket: post.bracket,
        leafBracket: leaf.bracket,
        low: Float64Array.from(spans, (span) => span.from),
        high: Float64Array.from(spans, (span) => span.to),
        origin: Float64Array.from(spans, (span) => span.from),
        step: Float64Array.from(spans, (span) => span.step ?? 0),
      };
      if (tightenToSteps(cell)) cells.push(cell);
    }
  }
  return cells;
}

function checkSpan(span: Span): void {
  if (!(span.from <= span.to)) {
    throw new RangeError(`span from ${span.from} to ${span.to}: expected from ≤ to`);
  }
  if (span.step !== null && !(span.step > 0)) {
    throw new RangeError(`span step ${span.step}: expected a positive step or null`);
  }
}

/** The nearest possible value of coordinate j to `value` inside the cell. */
export function nearestPossible(cell: Cell, j: number, value: number): number {
  const low = cell.low[j] as number;
  const high = cell.high[j] as number;
  const step = cell.step[j] as number;
  if (step === 0) return Math.min(Math.max(value, low), high);
  const origin = cell.origin[j] as number;
  const snapped = origin + Math.round((value - origin) / step) * step;
  if (snapped < low - stepRoom) return low;
  return snapped > high + stepRoom ? high : snapped;
}

/** Draws stepped coordinates in to their outermost steps, in place; false when no step is left inside. */
function tightenToSteps(cell: Cell): boolean {
  for (let j = 0; j < 4; j++) {
    const step = cell.step[j] as number;
    if (step === 0) continue;
    const origin = cell.origin[j] as number;
    cell.low[j] = origin + Math.ceil(((cell.low[j] as number) - origin - stepRoom) / step) * step;
    cell.high[j] = origin + Math.floor(((cell.high[j] as number) - origin + stepRoom) / step) * step;
    if ((cell.low[j] as number) > (cell.high[j] as number) + stepRoom) return false;
    cell.high[j] = Math.max(cell.low[j] as number, cell.high[j] as number);
  }
  return true;
}

/** The two halves of a cell along coordinate j; a stepped coordinate is parted between steps. */
export function halves(cell: Cell, j: number): Cell[] {
  const middle = 0.5 * ((cell.low[j] as number) + (cell.high[j] as number));
  const step = cell.step[j] as number;
  // A middle that is itself a step belongs to the lower half only.
  const above = step === 0 ? middle : middle + 2 * stepRoom;
  const lower: Cell = { ...cell, low: cell.low.slice(), high: cell.high.slice() };
  const upper: Cell = { ...cell, low: cell.low.slice(), high: cell.high.slice() };
  lower.high[j] = middle;
  upper.low[j] = above;
  return [lower, upper].filter(tightenToSteps);
}

/** Longest side of a cell [m] and the coordinate it belongs to. */
export function longestSide(cell: Cell): { readonly j: number; readonly length: number } {
  let j = 0;
  let length = -1;
  for (let k = 0; k < 4; k++) {
    const side = (cell.high[k] as number) - (cell.low[k] as number);
    if (side > length) [j, length] = [k, side];
  }
  return { j, length };
}

/** The middle of a cell, whether or not its steps allow it. */
export const middleOf = (cell: Cell): Float64Array =>
  Float64Array.from(cell.low, (low, j) => 0.5 * (low + (cell.high[j] as number)));
