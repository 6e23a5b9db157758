import type { JobLeaf, JobPlacement } from "@pintle/job";
import { fixedOutline } from "./fixed-shapes.ts";
import { type LeafPose, leafPose } from "./leaf-pose.ts";
import { withoutControls } from "./one-line.ts";
import { type Box, boxRound, type Shape, type Spot, type TextShape } from "./scene.ts";

/** Letter size of labels on paper [mm]. */
const labelSize = 2.8;
const mostOfName = 22;

interface Angles {
  readonly leafAngleDeg: number;
  readonly ghostAnglesDeg: readonly number[];
  readonly cutAtMm?: number;
  readonly ghostCutAtMm?: number;
}

/** Names on the plan: things that stand still, the leaf at each of its angles, the hinge axis. */
export function planLabels(
  leaf: JobLeaf,
  placement: JobPlacement | null,
  pose: LeafPose,
  angles: Angles,
): Shape[] {
  const ghosts = angles.ghostAnglesDeg.map((angle) =>
    toeLabel(leaf, leafPose(leaf, pose.view, angle), angle, angles.ghostCutAtMm ?? angles.cutAtMm),
  );
  return [
    ...(leaf.fixed ?? []).map((thing, index) =>
      fixedLabel(thing.name, index, thing.outlineMm, pose, placement),
    ),
    ...ghosts,
    leafLabel(leaf, pose, angles.leafAngleDeg, angles.cutAtMm),
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

/** Inside the body where there is room, else beside the corner that is farthest from the ram. */
function fixedLabel(
  name: string,
  index: number,
  outline: readonly (readonly [number, number])[],
  pose: LeafPose,
  placement: JobPlacement | null,
): Shape {
  const box = boxRound(fixedOutline(outline, pose.view));
  const pinX = pose.view.alongSign * (placement?.postPin.alongMm ?? 0);
  const inside = besideLines(box, pinX);
  const head = pose.view.outSign === 1 ? box.top : box.bottom;
  const shift = pose.view.outSign === 1 ? { x: 0, y: -1.4 } : { x: 0, y: 3.4 };
  const at = { x: pose.view.alongSign === 1 ? box.left : box.right, y: head };
  const anchor = pose.view.alongSign === 1 ? "start" : "end";
  return label(at, shortName(name), { anchor, shift, inside, part: `fixed[${index}]` });
}

/** A drawing has room for a short name only; the whole one is in the job. */
function shortName(name: string): string {
  const characters = [...withoutControls(name)];
  return characters.length <= mostOfName
    ? characters.join("")
    : `${characters
        .slice(0, mostOfName - 1)
        .join("")
        .trimEnd()}…`;
}

/** The largest part of a body that the extension lines from the post pin and the hinge axis leave free. */
function besideLines(box: Box, pinX: number): Box {
  const cut = (from: number, to: number, at: number): [number, number] =>
    at <= from || at >= to ? [from, to] : at - from > to - at ? [from, at] : [at, to];
  const [left, right] = cut(box.left, box.right, pinX);
  const [top, bottom] = cut(box.top, box.bottom, 0);
  return { left, top, right, bottom };
}

/** Past the break of a leaf that is cut short, else behind its toe. */
function leafLabel(leaf: JobLeaf, pose: LeafPose, angleDeg: number, cutAtMm: number | undefined): Shape {
  if (cutAtMm === undefined || cutAtMm >= leaf.lengthMm) return toeLabel(leaf, pose, angleDeg, cutAtMm);
  const { turn, isFlipped } = readableTurn(pose.direction);
  const at = pose.leaf(cutAtMm, leaf.faceMm - leaf.thicknessMm / 2);
  const anchor = isFlipped ? "end" : "start";
  const shift = { x: isFlipped ? -3.5 : 3.5, y: 1 };
  return label(at, leafText(leaf, angleDeg), { turn, anchor, shift, part: "leaf" });
}

/** Along the leaf behind its toe: its face is where the ram and its dimensions are. */
function toeLabel(leaf: JobLeaf, pose: LeafPose, angleDeg: number, cutAtMm: number | undefined): Shape {
  const { turn, isFlipped } = readableTurn(pose.direction);
  const end = Math.min(leaf.lengthMm, cutAtMm ?? leaf.lengthMm);
  const back = leaf.faceMm - leaf.thicknessMm;
  const at = pose.leaf(end, back);
  // The back's side on the page, in the label's own axes: below the base line or above it.
  const off = pose.leaf(end, back - 1);
  const across = -(off.x - at.x) * Math.sin(turn) + (off.y - at.y) * Math.cos(turn);
  const shift = { x: isFlipped ? 3 : -3, y: across > 0 ? 3.6 : -1.4 };
  return label(at, leafText(leaf, angleDeg), {
    turn,
    anchor: isFlipped ? "start" : "end",
    shift,
    part: "leaf",
  });
}

/** The direction, or its opposite, that reads from the foot or from the right of the page. */
function readableTurn(direction: number): { turn: number; isFlipped: boolean } {
  const cos = Math.cos(direction);
  const isFlipped = cos < -1e-9 || (Math.abs(cos) <= 1e-9 && Math.sin(direction) > 0);
  return { turn: isFlipped ? direction + Math.PI : direction, isFlipped };
}

function leafText(leaf: JobLeaf, angleDeg: number): string {
  if (angleDeg === 0) return "leaf closed";
  const shown = Math.round(angleDeg * 10) / 10;
  return angleDeg === leaf.openAngleDeg ? `leaf open ${shown}°` : `leaf at ${shown}°`;
}
