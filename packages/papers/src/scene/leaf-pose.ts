import { turnSign } from "@pintle/core";
import { type JobLeaf, toSi, toTravel } from "@pintle/job";
import { onDrawing, type PlanView, turnOnDrawing } from "./plan-view.ts";
import type { Spot } from "./scene.ts";

/** One leaf at one angle on one drawing: takes leaf axes and the fixed frame to the drawing. */
export interface LeafPose {
  /** A point of the fixed frame [mm]. */
  readonly fixed: (point: Spot) => Spot;
  /** A point in leaf axes (along, off) [mm]. */
  readonly leaf: (along: number, off: number) => Spot;
  /** The same point in the fixed frame [mm]. */
  readonly inFrame: (along: number, off: number) => Spot;
  /** Direction of the drawing in which the leaf runs from heel to toe [rad]. */
  readonly direction: number;
  readonly view: PlanView;
}

/** The pose of a leaf that stands `angleDeg` from closed. */
export function leafPose(leaf: JobLeaf, view: PlanView, angleDeg: number): LeafPose {
  const turn = turnSign(toTravel(leaf)) * toSi(angleDeg, "deg");
  const cos = Math.cos(turn);
  const sin = Math.sin(turn);
  const inFrame = (along: number, off: number) => ({
    x: along * cos - off * sin,
    y: along * sin + off * cos,
  });
  return {
    view,
    fixed: (point) => onDrawing(view, point),
    inFrame,
    leaf: (along, off) => onDrawing(view, inFrame(along, off)),
    direction: turnOnDrawing(view, turn),
  };
}
