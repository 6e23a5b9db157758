import { lowestByCuts } from "./error-cuts.ts";
import type { Pins, SlackFunction } from "./slack-function.ts";
import { newSlope } from "./slack-function.ts";

const trial = new Float64Array(4);
const slope = newSlope();
const lowEnd = new Float64Array(4);
const lowSlope = new Float64Array(4);
const highEnd = new Float64Array(4);
const highSlope = new Float64Array(4);

/**
 * A first answer to `worstSlack`, quick and nearly always right.
 *
 * The slack is nearly linear over a box of errors, so the worst error is a corner unless a coordinate's slope
 * changes sign inside the box; that coordinate is then driven to its zero slope by interval secants. When
 * that does not settle (a contact jumps between features) all sixteen corners are tried as well.
 */
function likelyWorstSlack(
  f: SlackFunction,
  pins: Pins,
  reach: number,
  cosPhi: number,
  sinPhi: number,
  error: Float64Array,
  worstSlope: Float64Array,
): number {
  for (let j = 0; j < 4; j++) {
    trial[j] = pins[j] as number;
    lowSlope[j] = Number.NaN;
    highSlope[j] = Number.NaN;
  }
  let worst = lookAtTrial(f, pins, cosPhi, sinPhi, Number.POSITIVE_INFINITY, error, worstSlope);
  let settled = false;
  for (let round = 0; round < 12 && !settled; round++) {
    settled = true;
    for (let j = 0; j < 4; j++) {
      const g = slope[j] as number;
      const at = round === 0 ? 0 : (trial[j] as number) - (pins[j] as number);
      // Positive slope: the worst lies at or below here; remember the tightest bracket of the zero.
      if (g > 0) {
        highEnd[j] = at;
        highSlope[j] = g;
      } else {
        lowEnd[j] = at;
        lowSlope[j] = g;
      }
      // A slope of exactly zero may be the top of a hill: step off it, and the next round tells.
      let next = g < 0 ? reach : -reach;
      const bracketed = !Number.isNaN(lowSlope[j] as number) && !Number.isNaN(highSlope[j] as number);
      if (bracketed && (lowEnd[j] as number) < (highEnd[j] as number)) {
        const a = lowEnd[j] as number;
        const b = highEnd[j] as number;
        const ga = lowSlope[j] as number;
        const gb = highSlope[j] as number;
        next = a + ((b - a) * -ga) / (gb - ga);
      }
      if (Math.abs(next - at) > 1e-3 * reach) settled = false;
      trial[j] = (pins[j] as number) + next;
    }
    if (!settled) worst = lookAtTrial(f, pins, cosPhi, sinPhi, worst, error, worstSlope);
  }
  if (!settled) {
    for (let corner = 0; corner < 16; corner++) {
      for (let j = 0; j < 4; j++) trial[j] = (pins[j] as number) + ((corner >> j) & 1 ? reach : -reach);
      worst = lookAtTrial(f, pins, cosPhi, sinPhi, worst, error, worstSlope);
    }
  }
  return worst;
}

/** Evaluates at `trial`; keeps error and slope when it is the lowest so far. @returns the lowest so far */
function lookAtTrial(
  f: SlackFunction,
  pins: Pins,
  cosPhi: number,
  sinPhi: number,
  worst: number,
  error: Float64Array,
  worstSlope: Float64Array,
): number {
  const value = f.evaluate(trial, cosPhi, sinPhi, slope);
  if (!(value < worst)) return worst;
  // Plain loops: `set` and `fill` cost more than they save on four numbers, and this runs most of all.
  for (let j = 0; j < 4; j++) error[j] = (trial[j] as number) - (pins[j] as number);
  for (let j = 0; j < 5; j++) worstSlope[j] = slope[j] as number;
  return value;
}

/**
 * The least slack over all errors of up to ±`reach` in each pin coordinate, at one turn; leaves the error
 * that does it in `error`, and the slope there in `worstSlope`.
 *
 * A convex slack (a stroke kept from below, the gap of one section to one outline) is least where its slope
 * pushes against the bounds in every coordinate; where that is not so at the first answer, cutting planes take
 * over. A concave one is least at a corner, so all are looked at. A check of several pairs at once is neither:
 * there the answer is an error worth looking at, not surely the worst.
 */
export function worstSlack(
  f: SlackFunction,
  pins: Pins,
  reach: number,
  cosPhi: number,
  sinPhi: number,
  error: Float64Array,
  worstSlope: Float64Array,
): number {
  let worst = f.bitesAtCorners
    ? Number.POSITIVE_INFINITY
    : likelyWorstSlack(f, pins, reach, cosPhi, sinPhi, error, worstSlope);
  if (f.bitesAtCorners) {
    for (let corner = 0; corner < 16; corner++) {
      for (let j = 0; j < 4; j++) trial[j] = (pins[j] as number) + ((corner >> j) & 1 ? reach : -reach);
      worst = lookAtTrial(f, pins, cosPhi, sinPhi, worst, error, worstSlope);
    }
    return worst;
  }
  if (worst === Number.POSITIVE_INFINITY) return worst;
  if (!pushesAgainstBounds(error, worstSlope, reach)) {
    worst = Math.min(worst, lowestByCuts(f, pins, reach, cosPhi, sinPhi, error, worstSlope));
  }
  // The ram's turning bends the slack a little: where it is nearly level the other end may be lower yet.
  let steepest = 0;
  for (let j = 0; j < 4; j++) steepest = Math.max(steepest, Math.abs(worstSlope[j] as number));
  for (let j = 0; j < 4; j++) {
    if (Math.abs(worstSlope[j] as number) > 0.15 * steepest) continue;
    for (let k = 0; k < 4; k++) trial[k] = (pins[k] as number) + (error[k] as number);
    trial[j] = (pins[j] as number) + ((error[j] as number) > 0 ? -reach : reach);
    worst = lookAtTrial(f, pins, cosPhi, sinPhi, worst, error, worstSlope);
  }
  return worst;
}

/** No coordinate can lower the slack any further from here, to first order. */
function pushesAgainstBounds(error: Float64Array, worstSlope: Float64Array, reach: number): boolean {
  for (let j = 0; j < 4; j++) {
    const [e, g] = [error[j] as number, worstSlope[j] as number];
    if (Math.abs(e) < (1 - 1e-9) * reach || e * g > 0) return false;
  }
  return true;
}

/**
 * The largest error ε in every pin coordinate at once for which one slack stays ≥ 0 at one turn [m]; at most
 * `ceiling`. Negative slack at the nominal pins gives 0.
 *
 * Newton on ε: the worst slack falls at the rate of the summed absolute slopes at the worst error.
 */
export function reserveAtTurn(
  f: SlackFunction,
  pins: Pins,
  ceiling: number,
  cosPhi: number,
  sinPhi: number,
  error: Float64Array,
  worstSlope: Float64Array,
): number {
  const nominal = f.evaluate(pins, cosPhi, sinPhi, worstSlope);
  for (let j = 0; j < 4; j++) error[j] = 0;
  if (nominal <= 0) return 0;
  if (nominal === Number.POSITIVE_INFINITY) return ceiling;
  let low = 0;
  let high = Number.POSITIVE_INFINITY;
  let reach = nominal / steepness(worstSlope);
  for (let step = 0; step < 40; step++) {
    if (reach >= ceiling) {
      // Only worth knowing whether this limit holds at the ceiling.
      if (worstSlack(f, pins, ceiling, cosPhi, sinPhi, error, worstSlope) >= 0) return ceiling;
      high = Math.min(high, ceiling);
      reach = Math.min(0.5 * (low + ceiling), ceiling);
    }
    const slack = worstSlack(f, pins, reach, cosPhi, sinPhi, error, worstSlope);
    if (slack >= 0) low = reach;
    else high = reach;
    // A nanometre on the safe side: a slack of ±1e-9 is zero here.
    if (Math.abs(slack) < 1e-9) return Math.max(low, reach - 1e-9);
    if (high - low < 1e-9) return low;
    let next = reach + slack / steepness(worstSlope);
    if (!(next > low && next < high))
      next = high === Number.POSITIVE_INFINITY ? 2 * reach : 0.5 * (low + high);
    reach = next;
  }
  // Bisection bounds it after forty halvings in any case; the safe side is the lower end.
  return low;
}

function steepness(worstSlope: Float64Array): number {
  let sum = 1e-12;
  for (let j = 0; j < 4; j++) sum += Math.abs(worstSlope[j] as number);
  return sum;
}
