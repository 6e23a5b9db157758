import type { Bench } from "../stages/placement/bench.ts";
import { onPlan, panelOutline, pathOf } from "./gate-shapes.ts";
import type { Spot } from "./projection.ts";

const asSpots = (outline: readonly (readonly [number, number])[]): Spot[] =>
  outline.map(([x, y]) => ({ x, y }));

/** What must be in sight when the work is near the hinge: axis, both pins over the travel, the post's near part. */
export function nearHinge({ leaf, openAngle }: Pick<Bench, "leaf" | "openAngle">): Spot[] {
  const pins = leaf.placement;
  const radius = pins === undefined ? leaf.lengthMm * 0.4 : pins.leafPin.alongMm;
  const standing = (leaf.fixed ?? [])
    .flatMap((thing) => asSpots(thing.outlineMm))
    .map(({ x, y }) => ({ x: Math.max(x, -0.42 * radius), y: Math.max(y, -0.34 * radius) }))
    .filter(({ x }) => x < radius);
  return [
    { x: 0, y: 0 },
    ...standing,
    ...(pins === undefined ? [] : [{ x: pins.postPin.alongMm, y: pins.postPin.outMm }]),
    ...pathOf(leaf, radius, pins?.leafPin.offMm ?? 0, openAngle, 12),
    onPlan(radius * 1.12, 0, 0),
  ];
}

/** The whole gate: every leaf closed and open, and everything that stands there. */
export function wholeGate({ job, leaf, leafIndex, openAngle }: Bench): Spot[] {
  const between = job.gateway?.betweenHingesMm;
  const other = job.leaves.length === 2 ? job.leaves[1 - leafIndex] : undefined;
  const mine = [
    ...panelOutline(leaf, 0),
    ...pathOf(leaf, leaf.lengthMm, leaf.faceMm, openAngle, 12),
    ...(leaf.fixed ?? []).flatMap((thing) => asSpots(thing.outlineMm)),
  ];
  if (between === undefined || other === undefined || other.hingeSide === leaf.hingeSide) return mine;
  const others = [
    ...panelOutline(other, 0),
    ...panelOutline(other, (other.openAngleDeg * Math.PI) / 180),
    ...(other.fixed ?? []).flatMap((thing) => asSpots(thing.outlineMm)),
  ].map(({ x, y }) => ({ x: between - x, y }));
  return [...mine, ...others];
}
