import type { Point } from "../linkage/pins.ts";
import { type Adjusted, adjust, usualIterationLimit } from "./adjustment.ts";
import { unfeltDirections } from "./missing-reading.ts";
import { type PinSpread, pinSpread } from "./pin-spread.ts";
import { usualStandardError } from "./reading.ts";
import { inverse } from "./symmetric-matrix.ts";

/** A tape length in plan from a known point to the point that is sought [m]; standard error default 2 mm. */
export interface PointDistance {
  readonly from: Point;
  readonly distance: number;
  readonly standardError?: number;
}

export interface LocatedPoint {
  readonly point: Point;
  readonly spread: PinSpread;
  /** Distance read − distance of the located point [m], in the order given. */
  readonly residuals: readonly number[];
  readonly chiSquared: number;
  readonly degreesOfFreedom: number;
  /** The point on the other side that fits about as well (always, with two distances); null when there is none. */
  readonly other: Point | null;
}

export type LocateOutcome =
  | { readonly ok: true; readonly value: LocatedPoint }
  | { readonly ok: false; readonly reason: "notSettled" | "iterationLimit" };

/**
 * A point from its distances to known points (trilateration), by weighted least squares.
 *
 * Any one frame; metres. With two distances the answer nearer to `near` (default: the first found) is
 * chosen and the other reported. `notSettled`: fewer than two distances, or all known points in line with
 * the one sought, so that it can slide unnoticed. Distances that cannot all be right give a large `chiSquared`,
 * not a failure. Source of the method: distance intersection by least squares, jerrymahun.com.
 * Throws RangeError for a distance or standard error that is not finite and > 0.
 *
 * ### Example
 *   const located = locatePoint([
 *     { from: { x: 0, y: 0 }, distance: 2.5 },
 *     { from: { x: 4, y: 0 }, distance: 2.5 },
 *     { from: { x: 0, y: 3 }, distance: 2.5 },
 *   ]);
 *   expect(located.ok && located.value.point.x).toBeCloseTo(2, 9);
 *   expect(located.ok && located.value.point.y).toBeCloseTo(1.5, 9);
 */
export function locatePoint(distances: readonly PointDistance[], near: Point | null = null): LocateOutcome {
  const observed = distances.map(({ distance, standardError = usualStandardError }, i) => {
    for (const [key, value] of Object.entries({ distance, standardError })) {
      if (!(Number.isFinite(value) && value > 0))
        throw new RangeError(`distances[${i}].${key} ${value} found, finite and > 0 expected`);
    }
    return { value: distance, standardError };
  });
  const found: Adjusted[] = [];
  let stopped = false;
  for (const start of crossings(distances)) {
    const adjusted = adjust({
      observed,
      predict: ([x, y]) => distances.map(({ from }) => distanceTo(from, x as number, y as number)),
      start: [start.x, start.y],
      iterationLimit: usualIterationLimit,
    });
    if (!adjusted.ok) stopped = true;
    else if (found.every(({ unknowns }) => apart(unknowns, adjusted.value.unknowns) > 1e-6))
      found.push(adjusted.value);
  }
  const nearness = ({ unknowns }: Adjusted): number =>
    near === null ? 0 : apart(unknowns, [near.x, near.y]);
  const least = Math.min(...found.map(({ chiSquared }) => chiSquared));
  const rank = ({ chiSquared }: Adjusted): number => (chiSquared <= least + 1e-6 ? least : chiSquared);
  const [best, second] = found.sort((a, b) => rank(a) - rank(b) || nearness(a) - nearness(b));
  if (best === undefined) return { ok: false, reason: stopped ? "iterationLimit" : "notSettled" };
  const covariance =
    unfeltDirections(
      best.predictions.map(({ gradient }) => gradient),
      2,
    ).length > 0
      ? null
      : inverse(best.normal);
  if (covariance === null) return { ok: false, reason: "notSettled" };
  const pointOf = ({ unknowns: [x, y] }: Adjusted): Point => ({ x: x as number, y: y as number });
  return {
    ok: true,
    value: {
      point: pointOf(best),
      spread: pinSpread(covariance, 0),
      residuals: observed.map(({ value }, i) => value - (best.predictions[i]?.value as number)),
      chiSquared: best.chiSquared,
      degreesOfFreedom: distances.length - 2,
      other: second !== undefined && second.chiSquared < best.chiSquared + 9 ? pointOf(second) : null,
    },
  };
}

const apart = (a: readonly number[], b: readonly number[]): number =>
  Math.hypot(...a.map((value, i) => value - (b[i] as number)));

function distanceTo(from: Point, x: number, y: number): { value: number; gradient: number[] } {
  const [dx, dy] = [x - from.x, y - from.y];
  const value = Math.hypot(dx, dy);
  return { value, gradient: value === 0 ? [0, 0] : [dx / value, dy / value] };
}

/** Where each two circles cross, both sides; where they do not meet, both sides of the point between them by a tenth of the smaller radius. */
function crossings(distances: readonly PointDistance[]): Point[] {
  return distances.flatMap((a, i) =>
    distances.slice(i + 1).flatMap((b) => {
      const [dx, dy] = [b.from.x - a.from.x, b.from.y - a.from.y];
      const base = Math.hypot(dx, dy);
      if (base === 0) return [];
      const foot = (base ** 2 + a.distance ** 2 - b.distance ** 2) / (2 * base);
      const height = Math.sqrt(
        Math.max(a.distance ** 2 - foot ** 2, (0.1 * Math.min(a.distance, b.distance)) ** 2),
      );
      return [1, -1].map((side) => ({
        x: a.from.x + (foot * dx - side * height * dy) / base,
        y: a.from.y + (foot * dy + side * height * dx) / base,
      }));
    }),
  );
}
