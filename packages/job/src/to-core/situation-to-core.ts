import { defaultNeed, type Need, type Situation } from "@pintle/core";
import { toSi } from "../quantity/units.ts";
import type { Job } from "../schema/job.ts";
import type { JobLeaf } from "../schema/leaf.ts";
import type { JobNeed } from "../schema/need.ts";
import type { JobRam } from "../schema/ram.ts";
import { toFixedThings, toLeaf, toRam } from "./leaf-to-core.ts";

/**
 * What a placement must keep, SI; what the job leaves out takes the core's default.
 *
 * ### Example
 *   expect(toNeed({ clearanceMm: 60 }).clearance).toBe(0.06);
 *   expect(toNeed(undefined).fixedClearance).toBe(0.015);
 */
export function toNeed(need: JobNeed | undefined): Need {
  const metres = (mm: number | undefined, otherwise: number) =>
    mm === undefined ? otherwise : toSi(mm, "mm");
  return {
    clearance: metres(need?.clearanceMm, defaultNeed.clearance),
    fixedClearance: metres(need?.fixedClearanceMm, defaultNeed.fixedClearance),
    lever: metres(need?.leverMm, defaultNeed.lever),
    deadCentre: need?.deadCentreDeg === undefined ? defaultNeed.deadCentre : toSi(need.deadCentreDeg, "deg"),
    sweep: metres(need?.sweepMm, defaultNeed.sweep),
  };
}

/**
 * Everything that a placement of `ram` on `leaf` is judged against, SI.
 *
 * ### Example
 *   const leaf = { id: "east", hingeSide: "left" as const, swing: "toward" as const, openAngleDeg: 90, lengthMm: 3600, heelMm: 30, thicknessMm: 50, faceMm: 25 };
 *   const ram = { id: "r", retractedMm: 760, strokeMm: 400, tube: [{ fromMm: -60, toMm: 560, halfWidthMm: 45 }], rodHalfWidthMm: 12 };
 *   expect(toSituation(leaf, ram).need.clearance).toBe(0.05);
 */
export function toSituation(leaf: JobLeaf, ram: JobRam): Situation {
  return { leaf: toLeaf(leaf), ram: toRam(ram), fixed: toFixedThings(leaf), need: toNeed(leaf.need) };
}

/**
 * The ram with an id, by default the one that the leaf names; null when the leaf names none. Throws on an id
 * that is not in the job: `readJob` refuses such leaves, so the id came from the caller.
 *
 * ### Example
 *   const leaf = { id: "east", hingeSide: "left" as const, swing: "toward" as const, openAngleDeg: 90, lengthMm: 3600, heelMm: 30, thicknessMm: 50, faceMm: 25 };
 *   const ram = { id: "r", retractedMm: 760, strokeMm: 400, tube: [{ fromMm: -60, toMm: 560, halfWidthMm: 45 }], rodHalfWidthMm: 12 };
 *   const job = { format: "pintle-job" as const, version: 1 as const, leaves: [leaf], rams: [ram] };
 *   expect(ramFor(job, leaf)).toBe(null);
 *   expect(ramFor(job, leaf, "r")).toBe(ram);
 */
export function ramFor(job: Job, leaf: JobLeaf, ramId: string | undefined = leaf.ram): JobRam | null {
  if (ramId === undefined) return null;
  const ram = (job.rams ?? []).find((candidate) => candidate.id === ramId);
  if (!ram) {
    const ids = (job.rams ?? []).map((candidate) => candidate.id).join(", ");
    throw new RangeError(`ramFor found no ram "${ramId}"; it expects one of: ${ids || "none in this job"}`);
  }
  return ram;
}
