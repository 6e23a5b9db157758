import type { JobLeaf } from "@pintle/job";
import { onDrawing, type PlanView } from "./plan-view.ts";
import type { Shape, Spot } from "./scene.ts";

/** How much of a post is drawn of which only two faces are known [mm]. */
const knownStretch = 160;

/** Piers, posts and walls of a leaf, hatched; a post of which only two faces are known as a hatched corner. */
export function fixedShapes(leaf: JobLeaf, view: PlanView): Shape[] {
  const outlines = (leaf.fixed ?? []).map(
    (thing, index): Shape => ({
      kind: "outline",
      role: "fixed",
      spots: fixedOutline(thing.outlineMm, view),
      closed: true,
      fill: "hatch",
      part: `fixed[${index}]`,
    }),
  );
  return [...lonePost(leaf, view), ...outlines];
}

/** The corners of a fixed thing on the drawing. */
export function fixedOutline(outlineMm: readonly (readonly [number, number])[], view: PlanView): Spot[] {
  return outlineMm.map(([x, y]) => onDrawing(view, { x, y }));
}

function lonePost(leaf: JobLeaf, view: PlanView): Shape[] {
  const { post } = leaf;
  if (post === undefined) return [];
  const corner = { x: post.gatewayFaceAlongMm, y: post.ramFaceOutMm };
  const drawnAnyway = (leaf.fixed ?? []).some((thing) =>
    thing.outlineMm.some(([x, y]) => Math.hypot(x - corner.x, y - corner.y) < 1),
  );
  if (drawnAnyway) return [];
  const ends = [
    { x: corner.x - knownStretch, y: corner.y },
    corner,
    { x: corner.x, y: corner.y - knownStretch },
  ];
  const body = [...ends, { x: corner.x - knownStretch, y: corner.y - knownStretch }];
  const on = (spot: Spot) => onDrawing(view, spot);
  return [
    { kind: "outline", role: "hatch", spots: body.map(on), closed: true, fill: "hatch", part: "post" },
    { kind: "outline", role: "fixed", spots: ends.map(on), closed: false, fill: "none", part: "post" },
  ];
}
