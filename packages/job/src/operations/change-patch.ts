import type { LeastChange } from "@pintle/core";
import { withPocket } from "@pintle/core";
import type { Job } from "../schema/job.ts";
import { toFixedThings } from "../to-core/leaf-to-core.ts";
import { bare, inDeg, inMm } from "./rounded.ts";

/** One step of a JSON Patch (RFC 6902). */
export interface PatchStep {
  readonly op: "add";
  readonly path: string;
  readonly value: unknown;
}

/**
 * A remedy as a JSON Patch on the job file, so that a face can apply it with one tap and undo it with
 * another. Null where the job lists brackets for the pin: which bracket to buy is then a person's choice.
 *
 * "add" replaces a value that exists and makes one that does not (RFC 6902, 4.1).
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
      return [set(`${at}/reach/leafPin/offMm/1`, bare(reach.offMm[1] + by))];
    }
    case "postPinOut": {
      const reach = leaf.reach?.postPin;
      if (reach === undefined || (leaf.brackets?.post?.length ?? 0) > 0) return null;
      return [set(`${at}/reach/postPin/outMm/1`, bare(reach.outMm[1] + by))];
    }
    case "postPocket": {
      const reach = leaf.reach?.postPin;
      const index = (leaf.fixed ?? []).findIndex((thing) => thing.name === change.thing);
      const thing = toFixedThings(leaf)[index];
      if (reach === undefined || thing === undefined || (leaf.brackets?.post?.length ?? 0) > 0) return null;
      const outline = withPocket(thing, change.by).outline.map((corner) => [inMm(corner.x), inMm(corner.y)]);
      return [
        set(`${at}/fixed/${index}/outlineMm`, outline),
        set(`${at}/reach/postPin/outMm/0`, bare(reach.outMm[0] - by)),
      ];
    }
  }
}
