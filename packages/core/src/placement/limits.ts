import type { ClearanceCheck } from "../clearance/clearance-check.ts";
import { clearanceChecks } from "../clearance/clearance-check.ts";
import type { SweepGap } from "../clearance/leaf-sweep.ts";
import { sweepGaps } from "../clearance/leaf-sweep.ts";
import type { LeastGap } from "../clearance/least-gap.ts";
import { leastGap } from "../clearance/least-gap.ts";
import type { TravelRates } from "../clearance/travel-rates.ts";
import { travelRates } from "../clearance/travel-rates.ts";
import { leastThrustAngle } from "../linkage/dead-centre.ts";
import { leastLever } from "../linkage/lever-arm.ts";
import { lengthRange } from "../linkage/pin-to-pin.ts";
import type { Placement, Point } from "../linkage/pins.ts";
import type { Limit } from "./limit.ts";
import type { Need, Situation } from "./situation.ts";

/** A situation with all that does not depend on the pins worked out once; search judges many placements with it. */
export interface Prepared {
  readonly situation: Situation;
  readonly checks: readonly ClearanceCheck[];
  /** The same, one for each pair of a ram section and an outline. */
  readonly pairs: readonly ClearanceCheck[];
  readonly sweeps: readonly SweepGap[];
}

/**
 * Works out once what no pin changes: outlines as convex pieces, and the leaf's own sweep.
 *
 * ### Example
 *   const prepared = prepare(workedExample.situation);
 *   expect(limitsOf(prepared, workedExample.roomy)).toEqual(limitsOf(workedExample.situation, workedExample.roomy));
 */
export function prepare(situation: Situation): Prepared {
  const checks = clearanceChecks(situation);
  return {
    situation,
    checks,
    pairs: checks.flatMap((check) =>
      check.sections.flatMap((section) =>
        check.outlines.map((outline) => ({ ...check, sections: [section], outlines: [outline] })),
      ),
    ),
    sweeps: sweepGaps(situation.leaf, situation.fixed),
  };
}

/**
 * The angle to dead centre that is held even when none is asked for: length must be strictly monotonic over
 * the travel (rule G6), so that zero may not pass. A milliradian is far below what a tape can set out.
 */
export const leastDeadCentre = (need: Need): number => Math.max(need.deadCentre, 1e-3);

function judged(
  id: string,
  unit: Limit["unit"],
  value: number,
  limit: number,
  slack: number,
  atAngle: number,
  where: Point | null,
): Limit {
  return { id, state: slack >= 0 ? "pass" : "fail", unit, value, limit, slack, atAngle, where };
}

/** The least gap of all checks that share an id; null when nothing was there to compare. */
function leastOf(prepared: Prepared, id: string, placement: Placement, rates: TravelRates): LeastGap | null {
  let least: LeastGap | null = null;
  for (const check of prepared.checks) {
    if (check.id !== id) continue;
    const gap = leastGap(check, placement, prepared.situation.leaf.travel, rates);
    if (gap !== null && (least === null || gap.gap < least.gap)) least = gap;
  }
  return least;
}

/**
 * Every limit of rule G10 for one placement, in a fixed order: stroke, lever, dead centre, clearances, rod,
 * sweep, force.
 *
 * Frame: rule G1. Lengths [m], angles [rad]; `slack` ≥ 0 keeps the limit. A clearance is negative where
 * bodies overlap. `force` is not checked until loads are known, and says so.
 * Accuracy: stroke, lever and dead centre are closed forms; clearances hold over the whole travel to 1 µm.
 *
 * ### Example
 *   const limits = limitsOf(workedExample.situation, workedExample.tight);
 *   const clearance = limits.find((limit) => limit.id === "clearance.leaf");
 *   expect(clearance?.value).toBeCloseTo(0.0323, 4);
 *   expect(clearance?.state).toBe("fail");
 */
export function limitsOf(situation: Situation | Prepared, placement: Placement): Limit[] {
  const prepared = "checks" in situation ? situation : prepare(situation);
  const { leaf, ram, need } = prepared.situation;
  const range = lengthRange(placement, leaf.travel);
  const rates = travelRates(placement, range);
  const shortest = ram.retracted + ram.retractedMargin;
  const longest = ram.retracted + ram.stroke - ram.extendedMargin;
  const lever = leastLever(placement, leaf.travel);
  const thrustAngle = leastThrustAngle(placement, leaf.travel);
  const limits = [
    judged("stroke.retracted", "m", range.least, shortest, range.least - shortest, range.leastAt, null),
    judged("stroke.extended", "m", range.greatest, longest, longest - range.greatest, range.greatestAt, null),
    judged("lever", "m", lever.value, need.lever, lever.value - need.lever, lever.atAngle, null),
    judged(
      "deadCentre",
      "rad",
      thrustAngle.value,
      leastDeadCentre(need),
      thrustAngle.value - leastDeadCentre(need),
      thrustAngle.atAngle,
      null,
    ),
  ];
  for (const id of new Set(prepared.checks.map((check) => check.id))) {
    const wanted = prepared.checks.find((check) => check.id === id)?.need ?? 0;
    const least = leastOf(prepared, id, placement, rates);
    limits.push(
      least === null
        ? notApplicable(id)
        : judged(id, "m", least.gap, wanted, least.gap - wanted, least.atAngle, least.where),
    );
  }
  for (const sweep of prepared.sweeps) {
    const id = `sweep.${sweep.name}`;
    limits.push(judged(id, "m", sweep.gap, need.sweep, sweep.gap - need.sweep, sweep.atAngle, sweep.where));
  }
  limits.push({
    id: "force",
    state: "not-checked",
    unit: "ratio",
    value: null,
    limit: null,
    slack: null,
    atAngle: null,
    where: null,
  });
  return limits;
}

function notApplicable(id: string): Limit {
  return {
    id,
    state: "not-applicable",
    unit: "m",
    value: null,
    limit: null,
    slack: null,
    atAngle: null,
    where: null,
  };
}
