import { turnSign } from "@pintle/core";
import { type JobLeaf, type JobPlacement, type JobRam, toTravel } from "@pintle/job";
import type { Spot } from "./projection.ts";

/** Turn φ of the leaf [rad] at leaf angle θ [rad] (rule G2). */
export const turnOf = (leaf: JobLeaf, theta: number): number => turnSign(toTravel(leaf)) * theta;

/** A point given in leaf axes [mm] on the plan, with the leaf turned by φ. */
export function onPlan(along: number, off: number, phi: number): Spot {
  const [cos, sin] = [Math.cos(phi), Math.sin(phi)];
  return { x: along * cos - off * sin, y: along * sin + off * cos };
}

/** A plan point [mm] in the axes of the leaf turned by φ. */
export function inLeafAxes({ x, y }: Spot, phi: number): { along: number; off: number } {
  const spot = onPlan(x, y, -phi);
  return { along: spot.x, off: spot.y };
}

const rectangle = (
  [fromX, toX]: readonly [number, number],
  [fromY, toY]: readonly [number, number],
): [number, number][] => [
  [fromX, fromY],
  [toX, fromY],
  [toX, toY],
  [fromX, toY],
];

/** The leaf's panel on the plan. */
export function panelOutline(leaf: JobLeaf, theta: number): Spot[] {
  const phi = turnOf(leaf, theta);
  const off = [leaf.faceMm - leaf.thicknessMm, leaf.faceMm] as const;
  return rectangle([leaf.heelMm, leaf.lengthMm], off).map(([x, y]) => onPlan(x, y, phi));
}

/** Rails, straps and plates on the leaf, on the plan. */
export function boxOutlines(leaf: JobLeaf, theta: number): Spot[][] {
  const phi = turnOf(leaf, theta);
  return (leaf.boxes ?? []).map((box) =>
    rectangle(box.alongMm, box.offMm).map(([x, y]) => onPlan(x, y, phi)),
  );
}

/** The ram hung between its pins: the stretches of its tube and its rod as outlines on the plan. */
export interface RamShape {
  readonly postPin: Spot;
  readonly leafPin: Spot;
  readonly tube: readonly Spot[][];
  readonly rod: Spot[];
}

export function ramShape(leaf: JobLeaf, ram: JobRam | null, pins: JobPlacement, theta: number): RamShape {
  const postPin = { x: pins.postPin.alongMm, y: pins.postPin.outMm };
  const leafPin = onPlan(pins.leafPin.alongMm, pins.leafPin.offMm, turnOf(leaf, theta));
  const [dx, dy] = [leafPin.x - postPin.x, leafPin.y - postPin.y];
  const length = Math.hypot(dx, dy) || 1;
  const [ux, uy] = [dx / length, dy / length];
  const band = (from: number, to: number, half: number): Spot[] =>
    rectangle([from, to], [-half, half]).map(([s, t]) => ({
      x: postPin.x + s * ux - t * uy,
      y: postPin.y + s * uy + t * ux,
    }));
  const tube = (ram?.tube ?? []).map((part) => band(part.fromMm, part.toMm, part.halfWidthMm));
  const tubeEnd = Math.max(0, ...(ram?.tube ?? []).map((part) => part.toMm));
  return { postPin, leafPin, tube, rod: band(Math.min(tubeEnd, length), length, ram?.rodHalfWidthMm ?? 2) };
}

/** Foot of the square from the hinge axis to the line of thrust: where the lever arm is drawn. */
export function leverFoot(shape: RamShape): Spot {
  const { postPin: p, leafPin: q } = shape;
  const [dx, dy] = [q.x - p.x, q.y - p.y];
  const share = -(p.x * dx + p.y * dy) / (dx * dx + dy * dy || 1);
  return { x: p.x + share * dx, y: p.y + share * dy };
}

/** Points along the path of a leaf point over the travel. */
export function pathOf(leaf: JobLeaf, along: number, off: number, until: number, steps = 48): Spot[] {
  return Array.from({ length: steps + 1 }, (_, i) => onPlan(along, off, turnOf(leaf, (until * i) / steps)));
}
