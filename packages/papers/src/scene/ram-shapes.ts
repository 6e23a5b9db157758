import { pinToPin } from "@pintle/core";
import {
  fromSi,
  type JobLeaf,
  type JobPlacement,
  type JobRam,
  toPlacement,
  toSi,
  toTravel,
} from "@pintle/job";
import type { LeafPose } from "./leaf-pose.ts";
import { onDrawing } from "./plan-view.ts";
import type { Role, Shape, Spot } from "./scene.ts";

/** The ram between its pins at one leaf angle: tube, rod and the line of thrust, in the order of drawing. */
export function ramShapes(
  leaf: JobLeaf,
  ram: JobRam,
  placement: JobPlacement,
  pose: LeafPose,
  angleDeg: number,
  role: Extract<Role, "ram" | "ghost">,
): Shape[] {
  const post = { x: placement.postPin.alongMm, y: placement.postPin.outMm };
  const leafPin = pose.inFrame(placement.leafPin.alongMm, placement.leafPin.offMm);
  const plan = Math.hypot(leafPin.x - post.x, leafPin.y - post.y);
  if (plan === 0) return [];
  const inCore = toPlacement(placement);
  if (inCore === null) return [];
  const length = fromSi(pinToPin(inCore, toTravel(leaf), toSi(angleDeg, "deg")), "mm");
  // Seen from above a ram that climbs from pin to pin is foreshortened.
  const shortened = plan / length;
  const way = { x: (leafPin.x - post.x) / plan, y: (leafPin.y - post.y) / plan };
  const onRam = (from: number, across: number): Spot =>
    onDrawing(pose.view, {
      x: post.x + way.x * from * shortened - way.y * across,
      y: post.y + way.y * from * shortened + way.x * across,
    });
  const band = (from: number, to: number, halfWidth: number): Shape => ({
    kind: "outline",
    role,
    spots: [onRam(from, -halfWidth), onRam(to, -halfWidth), onRam(to, halfWidth), onRam(from, halfWidth)],
    closed: true,
    fill: role === "ram" ? "tint" : "none",
    part: "ram",
  });
  const tubeEnd = Math.max(...ram.tube.map((stretch) => stretch.toMm));
  const rod = tubeEnd < length ? [band(tubeEnd, length, ram.rodHalfWidthMm)] : [];
  const tube = ram.tube.map((stretch) => band(stretch.fromMm, stretch.toMm, stretch.halfWidthMm));
  if (role === "ghost") return [...rod, ...tube];
  const tail = Math.min(0, ...ram.tube.map((stretch) => stretch.fromMm)) - 20;
  const axis: Shape = {
    kind: "line",
    role: "centreline",
    from: onRam(tail, 0),
    to: onRam(length + 40, 0),
  };
  return [...rod, ...tube, axis];
}
