import type { Pins, SlackFunction } from "../placement/slack-function.ts";
import { newSlope } from "../placement/slack-function.ts";

/** Turns looked at over the whole travel, and steps that a promising stretch between two of them is cut into. */
const coarse = 9;
const fine = 4;
const most = 12;

/** Turns φ at which a limit looks worst [rad]. Reused. */
export interface LowTurns {
  count: number;
  readonly at: Float64Array;
}

export const newLowTurns = (): LowTurns => ({ count: 0, at: new Float64Array(most) });

const slope = newSlope();
const coarseEstimates = new Float64Array(coarse);
const fineEstimates = new Float64Array(2 * fine + 1);

/**
 * Finds the turns, from closed (0) to `end` [rad], at which a limit looks worst under errors of `target`, to
 * first order: every local minimum over the travel, told apart down to a thirty-second of it. Two corners of a
 * ram may each have their own, close together. Those with more than `enough` to spare are left out.
 */
export function findLowTurns(
  f: SlackFunction,
  pins: Pins,
  end: number,
  target: number,
  enough: number,
  low: LowTurns,
): void {
  low.count = 0;
  const step = end / (coarse - 1);
  for (let i = 0; i < coarse; i++) coarseEstimates[i] = estimate(f, pins, step * i, target);
  for (let i = 0; i < coarse; i++) {
    if (!isLocalMinimum(coarseEstimates, coarse, i) || (coarseEstimates[i] as number) > enough) continue;
    const first = Math.max(0, i - 1);
    const count = (Math.min(coarse - 1, i + 1) - first) * fine + 1;
    const small = step / fine;
    for (let k = 0; k < count; k++) {
      fineEstimates[k] =
        k % fine === 0
          ? (coarseEstimates[first + k / fine] as number)
          : estimate(f, pins, step * first + small * k, target);
    }
    for (let k = 0; k < count && low.count < most; k++) {
      if (!isLocalMinimum(fineEstimates, count, k)) continue;
      low.at[low.count++] = step * first + small * k;
    }
  }
}

function isLocalMinimum(values: Float64Array, count: number, i: number): boolean {
  const here = values[i] as number;
  if (here === Number.POSITIVE_INFINITY) return false;
  if (i > 0 && (values[i - 1] as number) < here) return false;
  return i + 1 === count || (values[i + 1] as number) > here;
}

function estimate(f: SlackFunction, pins: Pins, phi: number, target: number): number {
  const slack = f.evaluate(pins, Math.cos(phi), Math.sin(phi), slope);
  let steep = 0;
  for (let j = 0; j < 4; j++) steep += Math.abs(slope[j] as number);
  return slack - target * steep;
}

/** Steps that a descent along the turn may walk before it closes in; together half of the travel. */
const longestWalk = (coarse - 1) * fine * 0.5;

/**
 * The turn at which a slack is lowest, downhill from `start`. A row taken at a sampled turn would stay up to
 * millimetres too high, and boxes that miss by less could never be ruled out.
 *
 * Walks in short steps until ∂/∂φ changes its sign (errors move the lowest turn), then closes in by regula
 * falsi in four steps.
 */
export function lowestTurn(f: SlackFunction, pins: Pins, start: number, end: number): number {
  const value = (phi: number) => f.evaluate(pins, Math.cos(phi), Math.sin(phi), slope);
  const inside = (phi: number) =>
    end > 0 ? Math.min(Math.max(phi, 0), end) : Math.max(Math.min(phi, 0), end);
  const step = Math.abs(end) / ((coarse - 1) * fine);
  let lowest = start;
  let least = value(start);
  let near = start;
  let rate = slope[4] as number;
  if (least === Number.POSITIVE_INFINITY || rate === 0) return start;
  let far = near;
  let farRate = rate;
  for (let walked = 0; walked < longestWalk && rate * farRate > 0; walked++) {
    [near, rate] = [far, farRate];
    far = inside(near - Math.sign(rate) * step);
    if (far === near) break;
    const slack = value(far);
    farRate = slope[4] as number;
    if (slack < least) [least, lowest] = [slack, far];
    else if (rate * farRate > 0) break;
  }
  for (let round = 0; round < 4 && rate * farRate < 0; round++) {
    const middle = near + ((far - near) * rate) / (rate - farRate);
    const slack = value(middle);
    const middleRate = slope[4] as number;
    if (slack < least) [least, lowest] = [slack, middle];
    if (Math.abs(middleRate) < 1e-3) break;
    if (middleRate * rate > 0) {
      [near, rate] = [middle, middleRate];
      farRate *= 0.5;
    } else {
      [far, farRate] = [middle, middleRate];
      rate *= 0.5;
    }
  }
  return lowest;
}
