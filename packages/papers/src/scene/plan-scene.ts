import { turnSign } from "@pintle/core";
import { type Job, type JobLeaf, type JobPlacement, ramFor, toSi, toTravel } from "@pintle/job";
import { fixedOutline, fixedShapes } from "./fixed-shapes.ts";
import { type LeafPose, leafPose } from "./leaf-pose.ts";
import { leafShapes } from "./leaf-shapes.ts";
import { type DimensionsOnPlan, planDimensions } from "./plan-dimensions.ts";
import { planLabels } from "./plan-labels.ts";
import { onDrawing, type PlanView, planView, type StandsOn, turnOnDrawing } from "./plan-view.ts";
import { ramShapes } from "./ram-shapes.ts";
import { boxRound, type Scene, type Shape, type Spot } from "./scene.ts";

/** What a plan shows. */
export interface PlanOptions {
  readonly standsOn: StandsOn;
  /** Where the leaf and the ram are drawn in full [deg from closed]. */
  readonly leafAngleDeg: number;
  /** Where else the leaf is drawn as a ghost [deg from closed]. */
  readonly ghostAnglesDeg: readonly number[];
  /** Draw the leaf only so far along, with a break line [mm]; the whole leaf without it. */
  readonly cutAtMm?: number;
  /** The same for its ghosts; `cutAtMm` unless given. */
  readonly ghostCutAtMm?: number;
  /** The toe's way over the travel. */
  readonly sweep: boolean;
  readonly labels: boolean;
  readonly dimensions: DimensionsOnPlan;
}

/**
 * The plan of one leaf seen from above, in full size: what stands still hatched, the leaf at one angle and as a
 * ghost at others, the ram between its pins, hinge axis, dimensions.
 *
 * `placement` null draws the leaf without a ram; a job whose leaf names no ram draws the pins alone. The hinge
 * axis is at the origin of the drawing. Throws RangeError when the job has no such leaf.
 *
 * ### Example
 *   const leaf = { id: "east", hingeSide: "right" as const, swing: "toward" as const, openAngleDeg: 90, lengthMm: 3600, heelMm: 30, thicknessMm: 50, faceMm: 25 };
 *   const job = { format: "pintle-job" as const, version: 1 as const, leaves: [leaf] };
 *   const plan = planScene(job, 0, null, { standsOn: "ramSide", leafAngleDeg: 0, ghostAnglesDeg: [], sweep: false, labels: false, dimensions: { ids: [] } });
 *   expect(plan.extent.left).toBe(-3600);
 */
export function planScene(
  job: Job,
  leafIndex: number,
  placement: JobPlacement | null,
  options: PlanOptions,
): Scene {
  const leaf = job.leaves[leafIndex];
  if (!leaf)
    throw new RangeError(`planScene found leaf ${leafIndex}; it expects one of ${job.leaves.length}`);
  const view = planView(leaf.hingeSide, options.standsOn);
  const pose = leafPose(leaf, view, options.leafAngleDeg);
  const cutAt = options.cutAtMm ?? null;
  const ghosts = options.ghostAnglesDeg.flatMap((angle) =>
    leafShapes(leaf, leafPose(leaf, view, angle), { role: "ghost", cutAt: options.ghostCutAtMm ?? cutAt }),
  );
  const bodies: Shape[] = [
    ...fixedShapes(leaf, view),
    ...ghosts,
    ...(options.sweep ? [toeSweep(leaf, view)] : []),
    closedLine(leaf, view, placement),
    ...leafShapes(leaf, pose, { role: "leaf", cutAt }),
    ...(placement === null ? [] : pinnedRam(job, leaf, placement, pose, options.leafAngleDeg)),
    { kind: "mark", role: "hinge", mark: "hinge", at: { x: 0, y: 0 }, part: "hinge" },
  ];
  const labels = options.labels ? planLabels(leaf, placement, pose, options) : [];
  const dimensions = placement === null ? [] : planDimensions(job, leaf, placement, pose, options.dimensions);
  return {
    shapes: [...bodies, ...labels, ...dimensions],
    extent: extentOf(leaf, placement, view, options),
  };
}

function pinnedRam(
  job: Job,
  leaf: JobLeaf,
  placement: JobPlacement,
  pose: LeafPose,
  angleDeg: number,
): Shape[] {
  const ram = ramFor(job, leaf);
  const post = pose.fixed({ x: placement.postPin.alongMm, y: placement.postPin.outMm });
  const { alongMm, offMm } = placement.leafPin;
  const carrier = (from: Spot, to: Spot): Shape => ({ kind: "line", role: "leader", from, to });
  return [
    carrier(pose.leaf(alongMm, leaf.faceMm), pose.leaf(alongMm, offMm)),
    ...(ram === null ? [] : ramShapes(leaf, ram, placement, pose, angleDeg, "ram")),
    { kind: "mark", role: "ram", mark: "pin", at: post, part: "postPin" },
    { kind: "mark", role: "ram", mark: "pin", at: pose.leaf(alongMm, offMm), part: "leafPin" },
  ];
}

/** The closed leaf's line through the hinge axis, from which pins are measured. */
function closedLine(leaf: JobLeaf, view: PlanView, placement: JobPlacement | null): Shape {
  const behind = Math.min(-80, (placement?.postPin.alongMm ?? 0) - 40);
  const ahead = Math.min(leaf.lengthMm, 260);
  return {
    kind: "line",
    role: "centreline",
    from: onDrawing(view, { x: behind, y: 0 }),
    to: onDrawing(view, { x: ahead, y: 0 }),
  };
}

function toeSweep(leaf: JobLeaf, view: PlanView): Shape {
  const open = turnSign(toTravel(leaf)) * toSi(leaf.openAngleDeg, "deg");
  const fromAngle = turnOnDrawing(view, 0);
  // Through the half-way angle, so that an arc past half a turn or across ±180° keeps its side.
  const half = turnOnDrawing(view, open / 2);
  const by = 2 * Math.atan2(Math.sin(half - fromAngle), Math.cos(half - fromAngle));
  return {
    kind: "arc",
    role: "sweep",
    centre: { x: 0, y: 0 },
    radius: Math.hypot(leaf.lengthMm, leaf.faceMm),
    fromAngle,
    toAngle: fromAngle + by,
  };
}

function extentOf(leaf: JobLeaf, placement: JobPlacement | null, view: PlanView, options: PlanOptions) {
  const spots: Spot[] = [{ x: 0, y: 0 }];
  const addLeaf = (angle: number, cutAt: number) => {
    const pose = leafPose(leaf, view, angle);
    for (const along of [leaf.heelMm, Math.min(leaf.lengthMm, cutAt)]) {
      spots.push(pose.leaf(along, leaf.faceMm - leaf.thicknessMm), pose.leaf(along, leaf.faceMm));
    }
  };
  const cutAt = options.cutAtMm ?? leaf.lengthMm;
  addLeaf(options.leafAngleDeg, cutAt);
  for (const angle of options.ghostAnglesDeg) addLeaf(angle, options.ghostCutAtMm ?? cutAt);
  for (const thing of leaf.fixed ?? []) spots.push(...fixedOutline(thing.outlineMm, view));
  if (options.sweep) {
    for (let step = 0; step <= 24; step++) {
      spots.push(leafPose(leaf, view, (leaf.openAngleDeg * step) / 24).leaf(leaf.lengthMm, 0));
    }
  }
  if (placement !== null) {
    const pose = leafPose(leaf, view, options.leafAngleDeg);
    spots.push(
      pose.fixed({ x: placement.postPin.alongMm, y: placement.postPin.outMm }),
      pose.leaf(placement.leafPin.alongMm, placement.leafPin.offMm),
    );
  }
  return boxRound(spots);
}
