import type { Leaf } from "../leaf/leaf.ts";

/** The furthest that any corner of a leaf is from its hinge axis [m]: nothing of it ever reaches beyond. */
function sweepRadius(leaf: Leaf): number {
  const panel = {
    alongFrom: leaf.heel,
    alongTo: leaf.length,
    offFrom: leaf.face - leaf.thickness,
    offTo: leaf.face,
  };
  const radius = (box: typeof panel) =>
    Math.hypot(
      Math.max(Math.abs(box.alongFrom), Math.abs(box.alongTo)),
      Math.max(Math.abs(box.offFrom), Math.abs(box.offTo)),
    );
  return Math.max(...[panel, ...leaf.boxes].map(radius));
}

/**
 * How far apart two leaves of a pair stay whatever each is doing (rule G9): the distance of their hinge axes
 * less both sweep radii [m]. Where it is negative, only their motion over time can tell (rule G19).
 *
 * Exact as a promise that holds for every pair of angles; the true least gap may be larger. Throws when
 * `betweenHinges` is not a positive length.
 *
 * ### Example
 *   const leaf = { heel: 0.03, length: 1.8, thickness: 0.05, face: 0.025, boxes: [], travel: { swing: "toward" as const, openAngle: 1.5 } };
 *   expect(pairGap(leaf, leaf, 3.62)).toBeCloseTo(3.62 - 2 * Math.hypot(1.8, 0.025), 12);
 */
export function pairGap(one: Leaf, other: Leaf, betweenHinges: number): number {
  if (!(betweenHinges > 0))
    throw new RangeError(`${betweenHinges} m between hinges: expected a positive length`);
  return betweenHinges - sweepRadius(one) - sweepRadius(other);
}
