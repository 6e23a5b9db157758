import type { JobLeaf } from "@pintle/job";
import { fixedOutline } from "./fixed-shapes.ts";
import { type LeafPose, leafPose } from "./leaf-pose.ts";
import { boxRound, type Shape, type Spot, type TextShape } from "./scene.ts";

/** Letter size of labels on paper [mm]. */
const labelSize = 2.8;

interface Angles {
  readonly leafAngleDeg: number;
  readonly ghostAnglesDeg: readonly number[];
  readonly cutAtMm?: number;
}

/** Names on the plan: things that stand still, the leaf at each of its angles, the hinge axis. */
export function planLabels(leaf: JobLeaf, pose: LeafPose, angles: Angles): Shape[] {
  const ghosts = angles.ghostAnglesDeg.map((angle) =>
    leafLabel(leaf, leafPose(leaf, pose.view, angle), angle, angles),
  );
  return [
    ...(leaf.fixed ?? []).map((thing, index) => fixedLabel(thing.name, index, thing.outlineMm, pose)),
    ...ghosts,
    leafLabel(leaf, pose, angles.leafAngleDeg, angles),
  ];
}

const label = (at: Spot, text: string, rest: Partial<TextShape>): TextShape => ({
  kind: "text",
  role: "note",
  at,
  text,
  size: labelSize,
  anchor: "middle",
  turn: 0,
  shift: { x: 0, y: 0 },
  ...rest,
});

/** Beside the corner that is farthest from the ram. */
function fixedLabel(
  name: string,
  index: number,
  outline: readonly (readonly [number, number])[],
  pose: LeafPose,
): Shape {
  const box = boxRound(fixedOutline(outline, pose.view));
  const head = pose.view.outSign === 1 ? box.top : box.bottom;
  const shift = pose.view.outSign === 1 ? { x: 0, y: -1.4 } : { x: 0, y: 3.4 };
  const at = { x: pose.view.alongSign === 1 ? box.left : box.right, y: head };
  const anchor = pose.view.alongSign === 1 ? "start" : "end";
  return label(at, name, { anchor, shift, part: `fixed[${index}]` });
}

/** Along the leaf near its toe, behind it: its face is where the ram and its dimensions are. */
function leafLabel(leaf: JobLeaf, pose: LeafPose, angleDeg: number, { cutAtMm }: Angles): Shape {
  const end = Math.min(leaf.lengthMm, cutAtMm ?? leaf.lengthMm);
  const back = leaf.faceMm - leaf.thicknessMm;
  const at = pose.leaf(end, back);
  const flipped =
    Math.cos(pose.direction) < -1e-9 ||
    (Math.abs(Math.cos(pose.direction)) <= 1e-9 && Math.sin(pose.direction) > 0);
  const turn = flipped ? pose.direction + Math.PI : pose.direction;
  // The back's side on the page, in the label's own axes: below the base line or above it.
  const off = pose.leaf(end, back - 1);
  const across = -(off.x - at.x) * Math.sin(turn) + (off.y - at.y) * Math.cos(turn);
  const shift = { x: flipped ? 3 : -3, y: across > 0 ? 3.6 : -1.4 };
  return label(at, leafText(leaf, angleDeg), {
    anchor: flipped ? "start" : "end",
    turn,
    shift,
    part: "leaf",
  });
}

function leafText(leaf: JobLeaf, angleDeg: number): string {
  if (angleDeg === 0) return "leaf closed";
  const shown = Math.round(angleDeg * 10) / 10;
  return angleDeg === leaf.openAngleDeg ? `leaf open ${shown}°` : `leaf at ${shown}°`;
}
