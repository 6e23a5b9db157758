import type { Job } from "../schema/job.ts";
import type { JobLeaf } from "../schema/leaf.ts";
import type { PlaceDocument, PlacementDocument } from "./documents.ts";

/**
 * A job with the best placement found put into each leaf, to the millionth of a millimetre as it was solved;
 * the job given is not changed. A leaf for which none was found stays as it is.
 *
 * The pins are marked as assumed: nobody has drilled or measured them.
 *
 * ### Example
 *   const placement = { postPin: { alongMm: -150, outMm: 150 }, leafPin: { alongMm: 907.2, offMm: 85 } };
 *   const reach = { postPin: { alongMm: [-260, -60] as [number, number], outMm: [80, 320] as [number, number] }, leafPin: { alongMm: [850, 1150] as [number, number], offMm: [85, 145] as [number, number] } };
 *   const leaf = { id: "east", hingeSide: "left" as const, swing: "toward" as const, openAngleDeg: 90, lengthMm: 3600, heelMm: 30, thicknessMm: 50, faceMm: 25, ram: "r", placement, reach, need: { leverMm: 120 } };
 *   const ram = { id: "r", retractedMm: 760, strokeMm: 400, tube: [{ fromMm: -60, toMm: 560, halfWidthMm: 45 }], rodHalfWidthMm: 12 };
 *   const job = { format: "pintle-job" as const, version: 1 as const, leaves: [leaf], rams: [ram] };
 *   const placed = withPlacements(job, placeJob(job, { best: 1 }));
 *   expect(checkJob(job).summary.fail).toBeGreaterThan(0);
 *   expect(checkJob(placed).summary.fail).toBe(0);
 */
export function withPlacements(job: Job, found: PlaceDocument): Job {
  const best = new Map(found.leaves.map(({ id, placements }) => [id, placements[0]]));
  return {
    ...job,
    leaves: job.leaves.map((leaf) => {
      const placement = best.get(leaf.id);
      return placement === undefined ? leaf : placed(leaf, placement);
    }),
  };
}

function placed(leaf: JobLeaf, { postPin, leafPin, riseMm, ram }: PlacementDocument): JobLeaf {
  // Other keys of the old placement stay, but what they say of where the old pins came from does not.
  const { origin: _, ...kept } = leaf.placement ?? {};
  const placement = { how: "assumed" as const, note: "found by search, as solved; not drilled yet" };
  return {
    ...leaf,
    ram,
    placement: { ...kept, postPin, leafPin, riseMm },
    origin: { ...leaf.origin, placement },
  };
}
