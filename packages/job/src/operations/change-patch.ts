import type { LeastChange } from "@pintle/core";
import { withPocket } from "@pintle/core";
import type { Job } from "../schema/job.ts";
import { toFixedThings } from "../to-core/leaf-to-core.ts";
import type { PatchStep } from "./patch-step.ts";
import { bare, inDeg, inMm } from "./rounded.ts";

/**
 * A remedy as a JSON Patch on the job file, so that a face can apply it with one tap and undo it with
 * another. Null where the job lists brackets for the pin: which bracket to buy is then a person's choice.
 *
 * "add" replaces a key that exists and makes one that does not; in a list it would push the rest along, so a
 * range is set as a whole (RFC 6902, 4.1).
 *
 * ### Example
 *   const leaf = { id: "east", hingeSide: "left" as const, swing: "toward" as const, openAngleDeg: 90, lengthMm: 3600, heelMm: 30, thicknessMm: 50, faceMm: 25, ram: "r" };
 *   const ram = { id: "r", retractedMm: 760, strokeMm: 400, tube: [{ fromMm: -60, toMm: 560, halfWidthMm: 45 }], rodHalfWidthMm: 12 };
 *   const job = { format: "pintle-job" as const, version: 1 as const, leaves: [leaf], rams: [ram] };
 *   const more = { kind: "stroke" as const, by: 0.022, unit: "m" as const, thing: null, placement: { postPin: { along: -0.15, out: 0.15 }, leafPin: { along: 0.9, off: 0.09 }, rise: 0 } };
 *   expect(changePatch(job, 0, "r", more)).toEqual([{ op: "add", path: "/rams/0/strokeMm", value: 422 }]);
 */
export function changePatch(
  job: Job,
  leafIndex: number,
  ramId: string,
  change: LeastChange,
): PatchStep[] | null {
  const leaf = job.leaves[leafIndex];
  const ramIndex = (job.rams ?? []).findIndex((ram) => ram.id === ramId);
  const ram = job.rams?.[ramIndex];
  if (leaf === undefined || ram === undefined) return null;
  const at = `/leaves/${leafIndex}`;
  const set = (path: string, value: unknown): PatchStep => ({ op: "add", path, value });
  const by = change.unit === "m" ? inMm(change.by) : inDeg(change.by);
  switch (change.kind) {
    case "stroke":
      return [set(`/rams/${ramIndex}/strokeMm`, bare(ram.strokeMm + by))];
    case "retractedLength":
      return [set(`/rams/${ramIndex}/retractedMm`, bare(ram.retractedMm + by))];
    case "openAngle":
      return [set(`${at}/openAngleDeg`, bare(leaf.openAngleDeg + by))];
    case "clearance": {
      const clearanceMm = bare((leaf.need?.clearanceMm ?? 50) + by);
      return leaf.need === undefined
        ? [set(`${at}/need`, { clearanceMm })]
        : [set(`${at}/need/clearanceMm`, clearanceMm)];
    }
    case "leafPinOff": {
      const reach = leaf.reach?.leafPin;
      if (reach === undefined || (leaf.brackets?.leaf?.length ?? 0) > 0) return null;
      return [set(`${at}/reach/leafPin/offMm`, [reach.offMm[0], bare(reach.offMm[1] + by)])];
    }
    case "postPinOut": {
      const reach = leaf.reach?.postPin;
      if (reach === undefined || (leaf.brackets?.post?.length ?? 0) > 0) return null;
      return [set(`${at}/reach/postPin/outMm`, [reach.outMm[0], bare(reach.outMm[1] + by)])];
    }
    case "postPocket": {
      const reach = leaf.reach?.postPin;
      const index = (leaf.fixed ?? []).findIndex((thing) => thing.name === change.thing);
      const thing = toFixedThings(leaf)[index];
      if (reach === undefined || thing === undefined || (leaf.brackets?.post?.length ?? 0) > 0) return null;
      const outline = withPocket(thing, change.by).outline.map((corner) => [inMm(corner.x), inMm(corner.y)]);
      return [
        set(`${at}/fixed/${index}/outlineMm`, outline),
        set(`${at}/reach/postPin/outMm`, [bare(reach.outMm[0] - by), reach.outMm[1]]),
      ];
    }
  }
}
