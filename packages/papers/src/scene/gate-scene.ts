import { type Job, toSi } from "@pintle/job";
import { movedScene } from "./moved.ts";
import { dimensionFigure } from "./plan-dimensions.ts";
import { type PlanOptions, planScene } from "./plan-scene.ts";
import type { StandsOn } from "./plan-view.ts";
import type { Scene } from "./scene.ts";

/**
 * The plan of a whole pair of leaves, closed, with ghosts of both open and the distance of their hinge axes; the
 * hinge axis of the leaf on the left of the page is at the origin. Null for a job that is no such pair: two
 * leaves hinged on different sides, and the distance of their hinges given.
 *
 * ### Example
 *   const leaf = { id: "east", hingeSide: "left" as const, swing: "toward" as const, openAngleDeg: 90, lengthMm: 1990, heelMm: 30, thicknessMm: 50, faceMm: 25 };
 *   const pair = { format: "pintle-job" as const, version: 1 as const, gateway: { betweenHingesMm: 4000 }, leaves: [leaf, { ...leaf, id: "west", hingeSide: "right" as const }] };
 *   expect(gateScene(pair, "ramSide")?.extent.right).toBe(4025);
 *   expect(gateScene({ ...pair, leaves: [leaf] }, "ramSide")).toBe(null);
 */
export function gateScene(job: Job, standsOn: StandsOn): Scene | null {
  const between = job.gateway?.betweenHingesMm;
  const [first, second] = job.leaves;
  if (between === undefined || first === undefined || second === undefined || job.leaves.length !== 2)
    return null;
  if (first.hingeSide === second.hingeSide) return null;
  const onLeft = standsOn === "ramSide" ? "left" : "right";
  const scenes = job.leaves.map((leaf, index) => {
    const options: PlanOptions = {
      standsOn,
      leafAngleDeg: 0,
      ghostAnglesDeg: [leaf.openAngleDeg],
      sweep: true,
      labels: true,
      dimensions: { ids: [] },
    };
    const scene = planScene(job, index, leaf.placement ?? null, options);
    return movedScene(scene, { x: leaf.hingeSide === onLeft ? 0 : between, y: 0 });
  });
  const extents = scenes.map((scene) => scene.extent);
  const extent = {
    left: Math.min(...extents.map((box) => box.left)),
    top: Math.min(...extents.map((box) => box.top)),
    right: Math.max(...extents.map((box) => box.right)),
    bottom: Math.max(...extents.map((box) => box.bottom)),
  };
  return {
    shapes: [
      ...scenes.flatMap((scene) => scene.shapes),
      {
        kind: "dimension",
        role: "dimension",
        from: { x: 0, y: 0 },
        to: { x: between, y: 0 },
        direction: 0,
        base: { x: 0, y: extent.top },
        away: -10,
        text: dimensionFigure(toSi(between, "mm"), job.display ?? "metric"),
        part: "dimension:betweenHinges",
      },
    ],
    extent,
  };
}
