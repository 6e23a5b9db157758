import type { JobLeaf } from "@pintle/job";
import type { LeafPose } from "./leaf-pose.ts";
import type { Role, Shape, Spot } from "./scene.ts";

/** How far the break line stands out on either side of the leaf, and its zigzag [full-size mm]. */
const breakReach = 25;
const breakWidth = 18;

/** What of a leaf is drawn and how. */
export interface LeafLook {
  readonly role: Extract<Role, "leaf" | "ghost">;
  /** Drawn only so far along, with a break line; null for the whole leaf [mm]. */
  readonly cutAt: number | null;
}

/** A leaf with its rails and straps at one angle, perhaps cut short by a break line. */
export function leafShapes(leaf: JobLeaf, pose: LeafPose, { role, cutAt }: LeafLook): Shape[] {
  const end = cutAt === null ? leaf.lengthMm : Math.min(leaf.lengthMm, cutAt);
  const back = leaf.faceMm - leaf.thicknessMm;
  const boxes = (leaf.boxes ?? []).filter((box) => box.alongMm[0] < end);
  const isCut = end < leaf.lengthMm;
  const shapes: Shape[] = [
    isCut
      ? openEnded(pose, role, leaf.heelMm, end, back, leaf.faceMm)
      : rectangle(pose, role, [leaf.heelMm, end], [back, leaf.faceMm]),
    ...boxes.map((box) => rectangle(pose, role, [box.alongMm[0], Math.min(end, box.alongMm[1])], box.offMm)),
  ];
  if (isCut) shapes.push(breakLine(pose, end, back, leaf.faceMm));
  return shapes;
}

function rectangle(
  pose: LeafPose,
  role: LeafLook["role"],
  along: readonly [number, number],
  off: readonly [number, number],
): Shape {
  const spots = [
    pose.leaf(along[0], off[0]),
    pose.leaf(along[1], off[0]),
    pose.leaf(along[1], off[1]),
    pose.leaf(along[0], off[1]),
  ];
  return {
    kind: "outline",
    role,
    spots,
    closed: true,
    fill: role === "leaf" ? "tint" : "none",
    part: "leaf",
  };
}

function openEnded(
  pose: LeafPose,
  role: LeafLook["role"],
  heel: number,
  end: number,
  back: number,
  face: number,
): Shape {
  const spots = [pose.leaf(end, back), pose.leaf(heel, back), pose.leaf(heel, face), pose.leaf(end, face)];
  return {
    kind: "outline",
    role,
    spots,
    closed: false,
    fill: role === "leaf" ? "tint" : "none",
    part: "leaf",
  };
}

/** The zigzag that says: the leaf goes on. */
function breakLine(pose: LeafPose, at: number, back: number, face: number): Shape {
  const middle = (back + face) / 2;
  const quarter = (face - back) / 6;
  const spots: Spot[] = [
    pose.leaf(at, back - breakReach),
    pose.leaf(at, middle - quarter),
    pose.leaf(at + breakWidth, middle - quarter / 2),
    pose.leaf(at - breakWidth, middle + quarter / 2),
    pose.leaf(at, middle + quarter),
    pose.leaf(at, face + breakReach),
  ];
  return { kind: "outline", role: "leader", spots, closed: false, fill: "none" };
}
