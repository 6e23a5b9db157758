import type { Contact } from "./ram-gap.ts";
import type { RamPose } from "./ram-pose.ts";

/** Order of the numbers in a slope: post pin along, post pin out, leaf pin along, leaf pin off, turn φ. */
export const slopeSize = 5;

/**
 * How a gap changes with the four pin coordinates and the turn φ [1, m/rad], written to `slope`.
 *
 * By the envelope theorem only the motion of the touching material point along the contact normal counts.
 * A tube point at raw station τ is A + τ·v/L + w·m with v = B − A and m left of v; a point on the rod's far
 * end is B − s·v/L + w·m. `inLeafFrame` says in which frame pose and contact are.
 */
export function gapSlope(
  pose: RamPose,
  contact: Contact,
  inLeafFrame: boolean,
  cosPhi: number,
  sinPhi: number,
  slope: Float64Array,
): void {
  const { ax, ay, bx, by, ux, uy, plan, length } = pose;
  const { nx, ny, lateral } = contact;
  const scale = plan / length;
  const raw = (contact.onRodEnd ? plan - contact.station : contact.station) / scale;
  const nu = nx * ux + ny * uy;
  const shared = (nu * plan * plan) / (length * length * length);
  const turn = (lateral * nu) / plan;
  let aX = raw * (nx / length - shared * ux) + turn * uy;
  let aY = raw * (ny / length - shared * uy) - turn * ux;
  let bX: number;
  let bY: number;
  if (contact.onRodEnd) {
    // Here the raw part counts back from the leaf pin, so it belongs to A with the sign of `turn` turned.
    aX = raw * (nx / length - shared * ux) - turn * uy;
    aY = raw * (ny / length - shared * uy) + turn * ux;
    bX = nx - aX;
    bY = ny - aY;
  } else {
    bX = aX;
    bY = aY;
    aX = nx - bX;
    aY = ny - bY;
  }
  if (inLeafFrame) {
    slope[0] = aX * cosPhi - aY * sinPhi;
    slope[1] = aX * sinPhi + aY * cosPhi;
    slope[2] = bX;
    slope[3] = bY;
    slope[4] = aX * ay - aY * ax;
  } else {
    slope[0] = aX;
    slope[1] = aY;
    slope[2] = bX * cosPhi + bY * sinPhi;
    slope[3] = bY * cosPhi - bX * sinPhi;
    slope[4] = bY * bx - bX * by;
  }
}
