import { lengthRange } from "../linkage/pin-to-pin.ts";
import type { Placement, Point, Travel } from "../linkage/pins.ts";
import { turnSign } from "../linkage/pins.ts";
import type { ClearanceCheck } from "./clearance-check.ts";
import { gapFloor } from "./gap-floor.ts";
import type { ConvexOutline } from "./outline.ts";
import type { Contact, RamSection } from "./ram-gap.ts";
import { nearerGap, newContact } from "./ram-gap.ts";
import type { RamPose } from "./ram-pose.ts";
import { newPose, poseInFixedFrame, poseInLeafFrame } from "./ram-pose.ts";
import type { TravelRates } from "./travel-rates.ts";
import { travelRates } from "./travel-rates.ts";

/** How closely the least gap over the travel is bracketed [m]: a micrometre. */
export const gapTolerance = 1e-6;

/** The least gap of a check: value, leaf angle θ, and the ram's nearest point in the fixed frame. */
export interface LeastGap {
  readonly gap: number;
  readonly atAngle: number;
  readonly where: Point;
}

/** Puts the ram of a placement at leaf angle θ into `pose`, in the frame that a check is made in. */
export function poseAt(
  pose: RamPose,
  placement: Placement,
  sign: 1 | -1,
  theta: number,
  inLeafFrame: boolean,
): void {
  const { postPin, leafPin, rise } = placement;
  const phi = sign * theta;
  const c = Math.cos(phi);
  const s = Math.sin(phi);
  // Two plain calls rather than one through a variable: those are inlined, and then no number is boxed.
  if (inLeafFrame) poseInLeafFrame(pose, postPin.along, postPin.out, leafPin.along, leafPin.off, rise, c, s);
  else poseInFixedFrame(pose, postPin.along, postPin.out, leafPin.along, leafPin.off, rise, c, s);
}

/**
 * Gap of a check at one leaf angle θ [m]; negative where they overlap.
 *
 * Frame: rule G1; θ from closed [rad]. Exact to rounding.
 *
 * ### Example
 *   const { situation, tight } = workedExample;
 *   const [toLeaf] = clearanceChecks(situation);
 *   if (toLeaf) expect(gapAt(toLeaf, tight, situation.leaf.travel, Math.PI / 2)).toBeCloseTo(0.0323, 4);
 *   expect(toLeaf?.need).toBe(0.05);
 */
export function gapAt(check: ClearanceCheck, placement: Placement, travel: Travel, theta: number): number {
  const pose = newPose();
  const contact = newContact();
  poseAt(pose, placement, turnSign(travel), theta, check.inLeafFrame);
  nearestContact(pose, check, contact);
  return contact.gap;
}

/** The nearest contact of all sections and outlines of a check at one pose, written to `contact`. */
export function nearestContact(pose: RamPose, check: ClearanceCheck, contact: Contact): void {
  contact.gap = Number.POSITIVE_INFINITY;
  const { sections, outlines } = check;
  for (let s = 0; s < sections.length; s++) {
    for (let o = 0; o < outlines.length; o++) {
      nearerGap(pose, sections[s] as RamSection, outlines[o] as ConvexOutline, contact);
    }
  }
}

// Interval stack of the descent below; 64 levels of halving outrun double precision.
const stackTheta = new Float64Array(256);
const stackHalf = new Float64Array(256);

/**
 * The least gap of one check over the WHOLE travel (rule G7): nothing slips between samples.
 *
 * The travel is halved wherever a floor under the gap (`gapFloor`) does not yet rule out something lower
 * than the best found, down to 1 µm. `null` when the check has nothing to compare.
 *
 * Errors: none; a check is always decided, since each halving quarters what the floor gives away.
 *
 * ### Example
 *   const { situation, tight } = workedExample;
 *   const [toLeaf] = clearanceChecks(situation);
 *   const least = toLeaf ? leastGap(toLeaf, tight, situation.leaf.travel) : null;
 *   expect(least?.gap).toBeCloseTo(0.0323, 4);
 *   expect(least?.atAngle).toBeCloseTo(Math.PI / 2, 6);
 */
export function leastGap(
  check: ClearanceCheck,
  placement: Placement,
  travel: Travel,
  rates: TravelRates = travelRates(placement, lengthRange(placement, travel)),
): LeastGap | null {
  const sign = turnSign(travel);
  const pose = newPose();
  const contact = newContact();
  let best = Number.POSITIVE_INFINITY;
  let bestTheta = 0;
  for (const theta of [0, travel.openAngle]) {
    poseAt(pose, placement, sign, theta, check.inLeafFrame);
    nearestContact(pose, check, contact);
    if (contact.gap < best) [best, bestTheta] = [contact.gap, theta];
  }
  const pieces = Math.max(1, Math.ceil(travel.openAngle / 0.6));
  const half = travel.openAngle / pieces / 2;
  for (const section of check.sections) {
    for (const outline of check.outlines) {
      let depth = 0;
      for (let i = 0; i < pieces; i++) {
        stackTheta[depth] = (2 * i + 1) * half;
        stackHalf[depth++] = half;
        while (depth > 0) {
          const theta = stackTheta[--depth] as number;
          const width = stackHalf[depth] as number;
          poseAt(pose, placement, sign, theta, check.inLeafFrame);
          contact.gap = Number.POSITIVE_INFINITY;
          nearerGap(pose, section, outline, contact);
          if (contact.gap < best) [best, bestTheta] = [contact.gap, theta];
          if (floorUnder(pose, contact, rates, check, section, width) >= best - gapTolerance) continue;
          stackTheta[depth] = theta - width / 2;
          stackHalf[depth++] = width / 2;
          stackTheta[depth] = theta + width / 2;
          stackHalf[depth++] = width / 2;
        }
      }
    }
  }
  if (best === Number.POSITIVE_INFINITY) return null;
  poseAt(pose, placement, sign, bestTheta, check.inLeafFrame);
  nearestContact(pose, check, contact);
  return {
    gap: best,
    atAngle: bestTheta,
    where: ramPointInFixedFrame(pose, contact, check, sign * bestTheta),
  };
}

/** A rod that is not out at all has no gap; how soon it comes out is bounded by the sliding rate. */
function floorUnder(
  pose: RamPose,
  contact: Contact,
  rates: TravelRates,
  check: ClearanceCheck,
  section: RamSection,
  width: number,
): number {
  if (contact.gap === Number.POSITIVE_INFINITY) {
    const shown = pose.length - section.to - section.from + rates.slide * width;
    return shown < 0
      ? Number.POSITIVE_INFINITY
      : width < 1e-7
        ? Number.POSITIVE_INFINITY
        : Number.NEGATIVE_INFINITY;
  }
  return gapFloor(pose, contact, rates, check.inLeafFrame, width);
}

function ramPointInFixedFrame(pose: RamPose, contact: Contact, check: ClearanceCheck, phi: number): Point {
  const x = pose.ax + contact.station * pose.ux - contact.lateral * pose.uy;
  const y = pose.ay + contact.station * pose.uy + contact.lateral * pose.ux;
  if (!check.inLeafFrame) return { x, y };
  return { x: x * Math.cos(phi) - y * Math.sin(phi), y: x * Math.sin(phi) + y * Math.cos(phi) };
}
