import { limitsOf, pairGap, reserveOf } from "@pintle/core";
import { type Finding, findingSummary, notChecked } from "../findings/finding.ts";
import { limitFindings } from "../findings/limit-findings.ts";
import { reserveText } from "../findings/reserve-wording.ts";
import { assumedValues } from "../origins/value-origins.ts";
import { displayUnit } from "../quantity/display-units.ts";
import { formatQuantity } from "../quantity/format-quantity.ts";
import { toSi } from "../quantity/units.ts";
import type { Job } from "../schema/job.ts";
import type { JobLeaf } from "../schema/leaf.ts";
import { toLeaf } from "../to-core/leaf-to-core.ts";
import { asBuiltLeaf } from "./as-built-job.ts";
import type { CheckDocument } from "./documents.ts";
import { leafWithPins } from "./leaf-question.ts";
import { inMm } from "./rounded.ts";

/**
 * Every limit and verdict that can be judged for a job (rule I15), and what cannot be judged yet, said plainly.
 *
 * Expects a job that `readJob` accepted. Order: leaf by leaf the limits, the reserve, then the stages that this
 * version does not work out.
 *
 * ### Example
 *   const leaf = { id: "east", hingeSide: "left" as const, swing: "toward" as const, openAngleDeg: 90, lengthMm: 3600, heelMm: 30, thicknessMm: 50, faceMm: 25 };
 *   const checked = checkJob({ format: "pintle-job", version: 1, leaves: [leaf] });
 *   expect(checked.summary.fail).toBe(0);
 *   expect(checked.findings[0]?.state).toBe("not-checked");
 */
export function checkJob(job: Job): CheckDocument {
  const findings = [
    ...job.leaves.flatMap((leaf, index) => leafFindings(job, leaf, index)),
    ...job.leaves.flatMap((leaf, index) => asBuiltFinding(job, leaf, index)),
    ...job.leaves.flatMap((leaf, index) => laterFindings(job, leaf, index)),
  ];
  const assumed = assumedValues(job).map((value) => value.path);
  return { findings, summary: { ...findingSummary(findings), assumed } };
}

function leafFindings(job: Job, leaf: JobLeaf, index: number): Finding[] {
  const question = leafWithPins(job, leaf);
  const path = `leaves[${index}]`;
  if (!question.ok) {
    return [
      notChecked({
        rule: "G10",
        id: "placement",
        leaf: leaf.id,
        path: `${path}.${leaf.ram === undefined ? "ram" : "placement"}`,
        text: `Placement: not checked; ${question.missing}`,
      }),
    ];
  }
  const { prepared, placement } = question.value;
  const limits = limitsOf(prepared, placement);
  const reserve = reserveOf(prepared, placement);
  const words = reserveText(reserve, job.display ?? "metric");
  return [
    ...limitFindings(job, index, limits),
    {
      rule: "G11",
      id: "reserve",
      state: reserve.feasible ? "pass" : "fail",
      leaf: leaf.id,
      value: inMm(reserve.reserve),
      limit: 0,
      slack: inMm(reserve.reserve),
      unit: "mm",
      atDeg: null,
      source: "geometry",
      path: `${path}.placement`,
      text: `Reserve: ${words}`,
    },
  ];
}

/** Whether the gate keeps its limits with the pins where the tape found them (rule G18); nothing without readings. */
function asBuiltFinding(job: Job, leaf: JobLeaf, index: number): Finding[] {
  if ((leaf.asBuilt?.readings.length ?? 0) === 0) return [];
  const built = asBuiltLeaf(job, leaf, false);
  const what = { rule: "G18", id: "asBuilt.reserve", leaf: leaf.id, path: `leaves[${index}].asBuilt` };
  if (built.reserveMm === null) {
    return [notChecked({ ...what, text: `As built: not checked; ${built.lines.join(" ")}` })];
  }
  const misread = built.misread.length > 0 ? "; a reading was likely misread" : "";
  return [
    {
      ...what,
      state: built.reserveMm >= 0 ? "pass" : "fail",
      value: built.reserveMm,
      limit: 0,
      slack: built.reserveMm,
      unit: "mm",
      atDeg: null,
      source: "geometry",
      text: `As built: ${built.reserveText}${misread}`,
    },
  ];
}

/** What this version cannot judge: silence would read as a pass. */
function laterFindings(job: Job, leaf: JobLeaf, index: number): Finding[] {
  const path = `leaves[${index}]`;
  const later = (rule: string, id: string, text: string): Finding =>
    notChecked({ rule, id, leaf: leaf.id, path, text });
  return [
    later("G9", "sweep.ground", "Leaf over the ground: not checked; no levels along the arc are recorded"),
    ...otherLeaf(job, leaf, index),
    later(
      "L15",
      "stage.load",
      "Fitness of leaf, hinges and post, wind: not checked; this version places pins only",
    ),
    later(
      "D7",
      "stage.force",
      "Force setting and force at the edge: not checked; this version places pins only",
    ),
    later("E5", "stage.power", "Battery, charging and cables: not checked; this version places pins only"),
    later("S6", "stage.protection", "Protection of people: not checked; this version places pins only"),
  ];
}

/** The other leaf of a pair: clear at any timing when the sweeps do not meet, else a matter of timing (rule G19). */
function otherLeaf(job: Job, leaf: JobLeaf, index: number): Finding[] {
  if (job.leaves.length < 2) return [];
  const other = job.leaves.length === 2 ? job.leaves[1 - index] : undefined;
  const what = { rule: "G9", id: "sweep.otherLeaf", leaf: leaf.id, path: "gateway.betweenHingesMm" };
  const between = job.gateway?.betweenHingesMm;
  if (other === undefined || between === undefined) {
    const why =
      other === undefined ? "only pairs of leaves can be judged" : "the distance of the hinges is not known";
    return [notChecked({ ...what, text: `Leaf against the other leaf: not checked; ${why}` })];
  }
  const gap = pairGap(toLeaf(leaf), toLeaf(other), toSi(between, "mm"));
  if (gap < 0) {
    const text =
      "Leaf against the other leaf: not checked; their sweeps meet, so it depends on which moves first";
    return [notChecked({ ...what, rule: "G19", text })];
  }
  const shown = formatQuantity(gap, displayUnit("length", job.display ?? "metric"));
  return [
    {
      ...what,
      state: "pass",
      value: inMm(gap),
      limit: 0,
      slack: inMm(gap),
      unit: "mm",
      atDeg: null,
      source: "geometry",
      text: `Leaf against the other leaf: at least ${shown} apart whichever moves first`,
    },
  ];
}
