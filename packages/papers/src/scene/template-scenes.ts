import type { DimensionId } from "@pintle/core";
import { type Display, type Job, type JobLeaf, type JobPlacement, toSi } from "@pintle/job";
import { fixedShapes } from "./fixed-shapes.ts";
import { type LeafPose, leafPose } from "./leaf-pose.ts";
import { leafShapes } from "./leaf-shapes.ts";
import { dimensionFigure, planDimensions } from "./plan-dimensions.ts";
import { onDrawing, planView } from "./plan-view.ts";
import type { Box, Shape, Spot } from "./scene.ts";
import { boxRound } from "./scene.ts";

/** A full-size drawing to lay on the work, and the part of it that must be seen [mm]. */
export interface TemplateScene {
  readonly shapes: readonly Shape[];
  readonly window: Box;
}

/** How far the window reaches past the outermost centre: a little more than the cross of a centre does [mm]. */
const around = 11;
const arm = 10;
/** How far the leaf's template reaches to either side of the pin [mm]. */
const besidePin = 85;

/**
 * The post pin full size, seen from above with the ram's side at the foot: hinge axis, the closed leaf's line,
 * the post's faces, the pin's centre.
 *
 * ### Example
 *   const leaf = { id: "east", hingeSide: "left" as const, swing: "toward" as const, openAngleDeg: 90, lengthMm: 3600, heelMm: 30, thicknessMm: 50, faceMm: 25 };
 *   const placement = { postPin: { alongMm: -150, outMm: 150 }, leafPin: { alongMm: 907.2, offMm: 85 } };
 *   const template = postTemplate({ format: "pintle-job", version: 1, leaves: [leaf] }, leaf, placement);
 *   expect(template.window.left).toBeLessThan(-150);
 */
export function postTemplate(job: Job, leaf: JobLeaf, placement: JobPlacement): TemplateScene {
  const view = planView(leaf.hingeSide, "ramSide");
  const pose = leafPose(leaf, view, 0);
  const pin = onDrawing(view, { x: placement.postPin.alongMm, y: placement.postPin.outMm });
  const hinge = { x: 0, y: 0 };
  const corner =
    leaf.post === undefined
      ? hinge
      : onDrawing(view, { x: leaf.post.gatewayFaceAlongMm, y: leaf.post.ramFaceOutMm });
  const window = grown(boxRound([hinge, pin, corner]), around);
  return {
    window,
    shapes: [
      // Washed, not hatched: figures stand on the body here.
      ...fixedShapes(leaf, view).map((shape) =>
        shape.kind === "outline" && shape.fill === "hatch" ? { ...shape, fill: "tint" as const } : shape,
      ),
      axis({ x: window.left, y: 0 }, { x: window.right, y: 0 }),
      axis({ x: 0, y: window.top }, { x: 0, y: window.bottom }),
      ...target(pin, "post pin", "ram", Math.sign(hinge.x - pin.x)),
      ...target(hinge, "hinge axis", "hinge", Math.sign(pin.x - hinge.x)),
      ...postDimensions(job, leaf, placement, pose),
    ],
  };
}

/** Dimensions inside the window, between the centres, where the plan has them outside of the pier. */
function postDimensions(job: Job, leaf: JobLeaf, placement: JobPlacement, pose: LeafPose): Shape[] {
  const { alongMm, outMm } = placement.postPin;
  const face = leaf.post;
  const faceAlong = face?.gatewayFaceAlongMm ?? 0;
  const faceOut = face?.ramFaceOutMm ?? 0;
  // Lines keep clear of each other and of the figures, which stand in the middle of their lines.
  const outAt = clearPlace(alongMm, [faceAlong, alongMm / 2, (alongMm + faceAlong) / 2]);
  const faceOutAt = clearPlace(alongMm, [faceAlong, alongMm / 2, (alongMm + faceAlong) / 2, outAt]);
  const alongAt = clearPlace(outMm, [faceOut, outMm / 2, (outMm + faceOut) / 2]);
  const faceAlongAt = clearPlace(outMm, [faceOut, outMm / 2, (outMm + faceOut) / 2, alongAt]);
  const bases: Partial<Record<DimensionId, Spot>> = {
    postPinBehindHinge: pose.fixed({ x: 0, y: alongAt }),
    postPinOut: pose.fixed({ x: outAt, y: 0 }),
    postPinFromGatewayFace: pose.fixed({ x: 0, y: faceAlongAt }),
    postPinFromRamFace: pose.fixed({ x: faceOutAt, y: 0 }),
  };
  const ids = Object.keys(bases) as DimensionId[];
  return planDimensions(job, leaf, placement, pose, { ids }).map((dimension) => {
    const id = dimension.part?.replace("dimension:", "") as DimensionId;
    return { ...dimension, base: bases[id] ?? dimension.base, away: 0 };
  });
}

/** The place between 0 and `end` that is farthest from both and from everything in the way. */
function clearPlace(end: number, inTheWay: readonly number[]): number {
  let best = end / 2;
  let farthest = -1;
  for (let share = 0.1; share < 0.91; share += 0.05) {
    const place = share * end;
    const nearest = Math.min(...[0, end, ...inTheWay].map((other) => Math.abs(other - place)));
    if (nearest > farthest + 1e-9) {
      farthest = nearest;
      best = place;
    }
  }
  return best;
}

/**
 * The leaf pin full size, along the closed leaf: the leaf's face, the line square to it through the pin, and a
 * line at a round distance from the hinge axis to lay the sheet by. A sheet that reached to the hinge would add
 * up the printer's error over a metre; a tape does not.
 *
 * ### Example
 *   const leaf = { id: "east", hingeSide: "left" as const, swing: "toward" as const, openAngleDeg: 90, lengthMm: 3600, heelMm: 30, thicknessMm: 50, faceMm: 25 };
 *   const placement = { postPin: { alongMm: -150, outMm: 150 }, leafPin: { alongMm: 907.2, offMm: 85 } };
 *   const template = leafTemplate({ format: "pintle-job", version: 1, leaves: [leaf] }, leaf, placement);
 *   expect(template.window.right).toBeGreaterThan(907.2);
 */
export function leafTemplate(job: Job, leaf: JobLeaf, placement: JobPlacement): TemplateScene {
  const view = planView(leaf.hingeSide, "ramSide");
  const pose = leafPose(leaf, view, 0);
  const { alongMm, offMm } = placement.leafPin;
  const back = leaf.faceMm - leaf.thicknessMm;
  const window = boxRound([
    pose.leaf(alongMm - besidePin, back - 18),
    pose.leaf(alongMm + besidePin, Math.max(offMm, leaf.faceMm) + 14),
  ]);
  const round = roundDistance(alongMm, job.display ?? "metric");
  const pin = pose.leaf(alongMm, offMm);
  return {
    window,
    shapes: [
      ...leafShapes(leaf, pose, { role: "leaf", cutAt: null }),
      axis(pose.leaf(alongMm, back - 12), pose.leaf(alongMm, offMm + 12)),
      axis(pose.leaf(round, back - 12), pose.leaf(round, offMm + 12)),
      // On the side where the dimension off the face is not.
      ...target(pin, "leaf pin", "ram", -view.alongSign),
      ...planDimensions(job, leaf, placement, pose, { ids: ["leafPinFromLeafFace"] }),
      ...fromRoundLine(job, pose, round, alongMm, back),
    ],
  };
}

/** The line at a round distance, its name, and its dimension to the pin. */
function fromRoundLine(job: Job, pose: LeafPose, round: number, along: number, back: number): Shape[] {
  const display = job.display ?? "metric";
  const figure = (mm: number) => dimensionFigure(toSi(mm, "mm"), display);
  const unit = display === "us" ? "" : " mm";
  const at = pose.leaf(round, back - 13.5);
  return [
    {
      kind: "text",
      role: "text",
      at,
      text: `${figure(round)}${unit} from the hinge axis`,
      size: 3.2,
      anchor: "middle",
      turn: 0,
      shift: { x: 0, y: 0 },
    },
    ...(Math.abs(along - round) < 0.05
      ? []
      : [
          {
            kind: "dimension" as const,
            role: "dimension" as const,
            from: pose.leaf(round, back),
            to: pose.leaf(along, back),
            direction: 0,
            base: pose.leaf(0, back),
            away: -6,
            text: figure(Math.abs(along - round)),
          },
        ]),
  ];
}

/** A round distance some way short of the pin: whole 50 mm, or whole 2 in, so that a tape shows it plainly. */
function roundDistance(along: number, display: Display): number {
  const step = display === "us" ? 50.8 : 50;
  return Math.floor((along - 25) / step) * step;
}

const grown = (box: Box, by: number): Box => ({
  left: box.left - by,
  top: box.top - by,
  right: box.right + by,
  bottom: box.bottom + by,
});

const axis = (from: Spot, to: Spot): Shape => ({ kind: "line", role: "centreline", from, to });

/** Rings and a long cross to centre a punch by; the name stands to the right for `side` 1, to the left for −1. */
function target(at: Spot, name: string, role: "ram" | "hinge", side: number): Shape[] {
  const ring = (radius: number): Shape => ({
    kind: "circle",
    role: "leader",
    centre: at,
    radius,
    fill: "none",
  });
  const line = (dx: number, dy: number): Shape => ({
    kind: "line",
    role: "dimension",
    from: { x: at.x - dx, y: at.y - dy },
    to: { x: at.x + dx, y: at.y + dy },
  });
  return [
    ring(8),
    ring(4),
    line(arm, 0),
    line(0, arm),
    { kind: "circle", role, centre: at, radius: 1, fill: "none" },
    {
      kind: "text",
      role: "text",
      at,
      text: name,
      size: 3.4,
      anchor: side < 0 ? "end" : "start",
      turn: 0,
      shift: { x: side < 0 ? -2 : 2, y: -8.6 },
    },
  ];
}
