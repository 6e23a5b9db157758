import type { JobLeaf } from "@pintle/job";
import type { Spot } from "./scene.ts";

/** The side of the closed leaf on which the reader stands, with that side toward the foot of the page. */
export type StandsOn = "ramSide" | "otherSide";

/** How the frame of the job (x along the closed leaf, y to the ram's side) lies on the page. */
export interface PlanView {
  /** 1 when the closed leaf runs to the right of the page, −1 to the left. */
  readonly alongSign: 1 | -1;
  /** 1 when the ram's side is toward the foot of the page, −1 toward its head. */
  readonly outSign: 1 | -1;
}

/**
 * How a plan seen from above lies on the page for a reader who stands on one side of the gate.
 *
 * `hingeSide` is told by somebody on the ram's side. There a left-hand leaf runs to the right and the ram's side
 * is at the foot of the page; a right-hand leaf is its mirror image. From the other side the whole page turns by
 * half a turn, which mirrors nothing.
 *
 * ### Example
 *   expect(planView("left", "ramSide")).toEqual({ alongSign: 1, outSign: 1 });
 *   expect(planView("right", "ramSide")).toEqual({ alongSign: -1, outSign: 1 });
 *   expect(planView("left", "otherSide")).toEqual({ alongSign: -1, outSign: -1 });
 */
export function planView(hingeSide: JobLeaf["hingeSide"], standsOn: StandsOn): PlanView {
  const along = hingeSide === "left" ? 1 : -1;
  return standsOn === "ramSide"
    ? { alongSign: along, outSign: 1 }
    : { alongSign: along === 1 ? -1 : 1, outSign: -1 };
}

/**
 * A point of the job's frame [mm] on the drawing in full size. Its own inverse: it takes a spot of the drawing
 * back to the frame.
 *
 * ### Example
 *   const view = planView("right", "ramSide");
 *   expect(onDrawing(view, { x: 955, y: 145 })).toEqual({ x: -955, y: 145 });
 *   expect(onDrawing(view, onDrawing(view, { x: 955, y: 145 }))).toEqual({ x: 955, y: 145 });
 */
export function onDrawing(view: PlanView, point: Spot): Spot {
  return { x: view.alongSign * point.x, y: view.outSign * point.y };
}

/**
 * A direction of the job's frame, from +x toward +y [rad], as a direction on the drawing.
 *
 * ### Example
 *   expect(turnOnDrawing(planView("left", "ramSide"), 0.3)).toBeCloseTo(0.3, 12);
 *   expect(turnOnDrawing(planView("right", "ramSide"), 0)).toBeCloseTo(Math.PI, 12);
 */
export function turnOnDrawing(view: PlanView, angle: number): number {
  return Math.atan2(view.outSign * Math.sin(angle), view.alongSign * Math.cos(angle));
}
