import type { Limit } from "@pintle/core";
import { pathInWords } from "../fault.ts";
import { fromSi } from "../quantity/units.ts";
import type { Display, Job } from "../schema/job.ts";
import type { JobLeaf } from "../schema/leaf.ts";
import type { Finding, FindingUnit } from "./finding.ts";
import { limitNeed, limitPath } from "./limit-names.ts";
import { limitText } from "./limit-wording.ts";

const practice = "common practice, no source";

const findingUnits: Record<Limit["unit"], FindingUnit> = { m: "mm", rad: "deg", ratio: "ratio" };

/**
 * Findings for the limits of one leaf (rule G10), in the order of the limits.
 *
 * Numbers come in millimetres and degrees; `text` is in the job's display units. The source is `job` for what
 * the job asks for, `common practice, no source` for a default, `geometry` where nothing was asked.
 * Throws RangeError when the job has no leaf with that index.
 *
 * ### Example
 *   const leaf = { id: "east", hingeSide: "left" as const, swing: "toward" as const, openAngleDeg: 90, lengthMm: 3600, heelMm: 30, thicknessMm: 50, faceMm: 25 };
 *   const job = { format: "pintle-job" as const, version: 1 as const, leaves: [leaf] };
 *   const limit = { id: "clearance.leaf", state: "pass" as const, unit: "m" as const, value: 0.075, limit: 0.05, slack: 0.025, atAngle: 0, where: null };
 *   const [finding] = limitFindings(job, 0, [limit]);
 *   expect(finding?.text).toBe("Clearance to the leaf: 75 mm, 50 mm needed, least at 0°; 25 mm to spare");
 *   expect(finding?.source).toBe("common practice, no source");
 */
export function limitFindings(job: Job, leafIndex: number, limits: readonly Limit[]): Finding[] {
  const leaf = job.leaves[leafIndex];
  if (!leaf)
    throw new RangeError(`limitFindings found leaf ${leafIndex}; it expects one of ${job.leaves.length}`);
  const display = job.display ?? "metric";
  return limits.map((limit) => limitFinding(leaf, leafIndex, limit, display));
}

function limitFinding(leaf: JobLeaf, leafIndex: number, limit: Limit, display: Display): Finding {
  const fixed = (leaf.fixed ?? []).map((thing) => thing.name);
  return {
    rule: "G10",
    id: limit.id,
    state: limit.state,
    leaf: leaf.id,
    value: inFileUnit(limit.value, limit.unit),
    limit: inFileUnit(limit.limit, limit.unit),
    slack: inFileUnit(limit.slack, limit.unit),
    unit: findingUnits[limit.unit],
    atDeg: inFileUnit(limit.atAngle, "rad"),
    source: limitSource(leaf, limit.id),
    path: `${pathInWords(["leaves", leafIndex])}.${limitPath(limit.id, fixed)}`,
    text: limitText(limit, display),
  };
}

function inFileUnit(si: number | null, unit: Limit["unit"]): number | null {
  if (si === null || unit === "ratio") return si;
  return fromSi(si, unit === "m" ? "mm" : "deg");
}

function limitSource(leaf: JobLeaf, id: string): string {
  const need = limitNeed(id);
  if (need === null) return id === "rod.contact" ? "geometry" : "job";
  if (leaf.need?.[need] !== undefined) return "job";
  // Defaults of 0 ask for nothing more than geometry does: a lever that does not reverse, bodies that do not overlap.
  return need === "leverMm" || need === "sweepMm" ? "geometry" : practice;
}
