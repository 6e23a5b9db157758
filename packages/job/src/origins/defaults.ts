import { defaultNeed } from "@pintle/core";
import { pathInWords } from "../fault.ts";
import { fromSi } from "../quantity/units.ts";
import type { Job } from "../schema/job.ts";
import type { JobLeaf } from "../schema/leaf.ts";

/** Standard error of a reading that states none [mm]: rule G18. */
const usualStandardErrorMm = 2;

/** A value that the job leaves out and the computation fills in. */
export interface AppliedDefault {
  readonly path: string;
  readonly value: number;
}

/**
 * Every default that the computation puts in for this job, in document order.
 *
 * Needs whose default is 0 (lever, sweep) ask for nothing and are not listed.
 *
 * ### Example
 *   const leaf = { id: "east", hingeSide: "left" as const, swing: "toward" as const, openAngleDeg: 90, lengthMm: 3600, heelMm: 30, thicknessMm: 50, faceMm: 25 };
 *   const job = { format: "pintle-job" as const, version: 1 as const, leaves: [leaf] };
 *   expect(appliedDefaults(job)[0]).toEqual({ path: "leaves[0].need.clearanceMm", value: 50 });
 */
export function appliedDefaults(job: Job): AppliedDefault[] {
  const defaults: AppliedDefault[] = [];
  job.leaves.forEach((leaf, index) => {
    defaults.push(...leafDefaults(leaf, pathInWords(["leaves", index])));
  });
  (job.rams ?? []).forEach((ram, index) => {
    const path = pathInWords(["rams", index]);
    if (ram.retractedMarginMm === undefined) defaults.push({ path: `${path}.retractedMarginMm`, value: 0 });
    if (ram.extendedMarginMm === undefined) defaults.push({ path: `${path}.extendedMarginMm`, value: 0 });
  });
  return defaults;
}

function leafDefaults(leaf: JobLeaf, path: string): AppliedDefault[] {
  const defaults: AppliedDefault[] = [];
  const add = (key: string, value: number) => {
    defaults.push({ path: `${path}.${key}`, value });
  };
  if (leaf.placement && leaf.placement.riseMm === undefined) add("placement.riseMm", 0);
  if (leaf.reach && leaf.reach.riseMm === undefined && leaf.placement?.riseMm === undefined)
    add("reach.riseMm", 0);
  if (leaf.need?.clearanceMm === undefined) add("need.clearanceMm", fromSi(defaultNeed.clearance, "mm"));
  if (leaf.need?.fixedClearanceMm === undefined && (leaf.fixed ?? []).length > 0) {
    add("need.fixedClearanceMm", fromSi(defaultNeed.fixedClearance, "mm"));
  }
  if (leaf.need?.deadCentreDeg === undefined)
    add("need.deadCentreDeg", fromSi(defaultNeed.deadCentre, "deg"));
  (leaf.asBuilt?.readings ?? []).forEach((reading, index) => {
    if (reading.standardErrorMm === undefined) {
      add(`asBuilt.readings[${index}].standardErrorMm`, usualStandardErrorMm);
    }
  });
  return defaults;
}
