import type { ClearanceCheck } from "../clearance/clearance-check.ts";
import { clearanceChecks } from "../clearance/clearance-check.ts";
import { nearestContact } from "../clearance/least-gap.ts";
import { newContact } from "../clearance/ram-gap.ts";
import { newPose, poseInFixedFrame, poseInLeafFrame } from "../clearance/ram-pose.ts";
import { leverAtPsi } from "../linkage/lever-arm.ts";
import { crankOf, trueLength } from "../linkage/pin-to-pin.ts";
import type { Placement } from "../linkage/pins.ts";
import { turnSign } from "../linkage/pins.ts";
import type { Prepared } from "../placement/limits.ts";
import type { Situation } from "../placement/situation.ts";

/** A swing as series over the leaf angle; every array has one number for each angle. SI. */
export interface SwingSeries {
  /** Leaf angle θ from closed [rad]; the last is the opening angle itself. */
  readonly theta: Float64Array;
  /** True pin-to-pin length [m]. */
  readonly pinToPin: Float64Array;
  /** Lever arm [m]. */
  readonly lever: Float64Array;
  /** Ram body to leaf [m]; NaN where there is nothing to compare. */
  readonly leafGap: Float64Array;
  /** Ram body to the nearest fixed thing [m]; NaN without fixed things. */
  readonly fixedGap: Float64Array;
  /** Speed of the toe at the ram's rod speed [m/s]; NaN when the ram's speed is not known or at dead centre. */
  readonly toeSpeed: Float64Array;
}

/**
 * Lengths, lever arm, clearances and toe speed over the travel at a given spacing (rules G5 to G7).
 *
 * `step` [rad] > 0; angles 0, step, 2·step … and the opening angle. Samples only: least values over the whole
 * travel come from `lengthRange`, `leastLever` and `leastGap`. Throws when `step` is not positive or asks for
 * more than 100,000 angles.
 *
 * ### Example
 *   const swing = swingSeries(workedExample.situation, workedExample.tight, Math.PI / 180);
 *   expect(swing.theta).toHaveLength(91);
 *   expect(swing.lever[0]).toBeCloseTo(0.1405, 4);
 */
export function swingSeries(
  situation: Situation | Prepared,
  placement: Placement,
  step: number,
): SwingSeries {
  const whole = "checks" in situation ? situation.situation : situation;
  const checks = "checks" in situation ? situation.checks : clearanceChecks(situation);
  const { openAngle } = whole.leaf.travel;
  if (!(step > 0)) throw new RangeError(`swing step ${step}: expected a positive angle in radians`);
  const steps = Math.floor(openAngle / step + 1e-9);
  const count = steps + (openAngle - steps * step > 1e-9 ? 2 : 1);
  if (count > 100_000)
    throw new RangeError(`swing step ${step}: expected at most 100000 angles, found ${count}`);
  const series: SwingSeries = {
    theta: new Float64Array(count),
    pinToPin: new Float64Array(count),
    lever: new Float64Array(count),
    leafGap: new Float64Array(count),
    fixedGap: new Float64Array(count),
    toeSpeed: new Float64Array(count),
  };
  const crank = crankOf(placement, whole.leaf.travel);
  const sign = turnSign(whole.leaf.travel);
  const toLeaf = checks.filter((check) => check.id === "clearance.leaf");
  const toFixed = checks.filter((check) => check.id !== "clearance.leaf" && check.id !== "rod.contact");
  const { speed } = whole.ram;
  for (let i = 0; i < count; i++) {
    const theta = i === count - 1 ? openAngle : i * step;
    const psi = crank.closedAngle + crank.angleSign * theta;
    const lever = leverAtPsi(crank, psi);
    const cosPhi = Math.cos(sign * theta);
    const sinPhi = Math.sin(sign * theta);
    series.theta[i] = theta;
    series.pinToPin[i] = trueLength(crank, psi);
    series.lever[i] = lever;
    series.leafGap[i] = nearest(toLeaf, placement, cosPhi, sinPhi);
    series.fixedGap[i] = nearest(toFixed, placement, cosPhi, sinPhi);
    series.toeSpeed[i] = speed === null || lever === 0 ? Number.NaN : (speed / lever) * whole.leaf.length;
  }
  return series;
}

const pose = newPose();
const contact = newContact();

function nearest(
  checks: readonly ClearanceCheck[],
  placement: Placement,
  cosPhi: number,
  sinPhi: number,
): number {
  const { postPin, leafPin, rise } = placement;
  let least = Number.POSITIVE_INFINITY;
  for (const check of checks) {
    const set = check.inLeafFrame ? poseInLeafFrame : poseInFixedFrame;
    set(pose, postPin.along, postPin.out, leafPin.along, leafPin.off, rise, cosPhi, sinPhi);
    nearestContact(pose, check, contact);
    if (contact.gap < least) least = contact.gap;
  }
  return least === Number.POSITIVE_INFINITY ? Number.NaN : least;
}
