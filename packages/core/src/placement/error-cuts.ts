import { greatestSlack, newRows } from "../search/linear-program.ts";
import type { Pins, SlackFunction } from "./slack-function.ts";
import { newSlope } from "./slack-function.ts";

const cuts = newRows();
const maxCuts = 40;
const half = new Float64Array(4);
const next = new Float64Array(4);
const trial = new Float64Array(4);
const slope = newSlope();

/**
 * Lowers a known worst slack of one contact over the errors of up to ±`reach`, in place of `error` and
 * `worstSlope`; returns the lowest slack found [m].
 *
 * The gap of two convex bodies is a convex function of how they are shifted, and nearly so of the pins: its
 * tangents lie beneath it. So the lowest point of all tangents found so far is looked at next, until the
 * slack there is what the tangents promise (cutting planes; J. E. Kelley, 1960). This does not stick on the
 * creases where one corner takes over from another, as going down one coordinate at a time does.
 */
export function lowestByCuts(
  f: SlackFunction,
  pins: Pins,
  reach: number,
  cosPhi: number,
  sinPhi: number,
  error: Float64Array,
  worstSlope: Float64Array,
): number {
  half.fill(reach);
  cuts.count = 0;
  let lowest = Number.POSITIVE_INFINITY;
  next.set(error);
  for (;;) {
    for (let j = 0; j < 4; j++) trial[j] = (pins[j] as number) + (next[j] as number);
    const slack = f.evaluate(trial, cosPhi, sinPhi, slope);
    // A rod that is not out here has no tangent to go by.
    if (slack === Number.POSITIVE_INFINITY) return lowest;
    if (slack < lowest) {
      lowest = slack;
      error.set(next);
      worstSlope.set(slope);
    }
    addCut(slack);
    const promised = -greatestSlack(cuts, half, next);
    if (!(lowest - promised > 1e-7) || cuts.count >= maxCuts) return lowest;
  }
}

/** The tangent at `next`, turned round: the program looks for the greatest, the worst error is the least. */
function addCut(slack: number): void {
  const at = cuts.count;
  let there = slack;
  for (let j = 0; j < 4; j++) {
    const g = slope[j] as number;
    cuts.a[at * 4 + j] = -g;
    there -= g * (next[j] as number);
  }
  cuts.b[at] = -there;
  cuts.w[at] = 1;
  cuts.count = at + 1;
}
