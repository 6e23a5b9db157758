import { bracketTurn, leastGap, leastLever, lengthRange, swingSeries, type TurnRange } from "@pintle/core";
import { toSi } from "../quantity/units.ts";
import type { Job } from "../schema/job.ts";
import type { JobLeaf } from "../schema/leaf.ts";
import type { SwingDocument, SwingLeafDocument, TurnDocument } from "./documents.ts";
import { leafWithPins } from "./leaf-question.ts";
import { inDeg, inMm, orNull } from "./rounded.ts";

/**
 * Lengths, lever arms, clearances and toe speed of every leaf over its travel (rules G5 to G8), as the document
 * of rule I15. Least values hold over the whole travel, not only at the angles listed.
 *
 * Throws RangeError when `stepDeg` is not positive or too fine (more than 100,000 angles).
 *
 * ### Example
 *   const placement = { postPin: { alongMm: -150, outMm: 150 }, leafPin: { alongMm: 907.2, offMm: 85 } };
 *   const leaf = { id: "east", hingeSide: "left" as const, swing: "toward" as const, openAngleDeg: 90, lengthMm: 3600, heelMm: 30, thicknessMm: 50, faceMm: 25, ram: "r", placement };
 *   const ram = { id: "r", retractedMm: 760, strokeMm: 400, tube: [{ fromMm: -60, toMm: 560, halfWidthMm: 45 }], rodHalfWidthMm: 12 };
 *   const swing = swingJob({ format: "pintle-job", version: 1, leaves: [leaf], rams: [ram] });
 *   expect(swing.leaves[0]?.lengthClosedMm).toBeCloseTo(1059.2, 1);
 *   expect(swing.leaves[0]?.clearanceMinMm).toBeCloseTo(32.3, 1);
 */
export function swingJob(job: Job, options: { readonly stepDeg?: number } = {}): SwingDocument {
  const stepDeg = options.stepDeg ?? 1;
  if (!(stepDeg > 0))
    throw new RangeError(`swingJob found a step of ${stepDeg}; it expects a positive angle`);
  const leaves: SwingLeafDocument[] = [];
  const notSwung: { id: string; why: string }[] = [];
  for (const leaf of job.leaves) {
    const swung = swingLeaf(job, leaf, stepDeg);
    if (typeof swung === "string") notSwung.push({ id: leaf.id, why: swung });
    else leaves.push(swung);
  }
  return { leaves, notSwung };
}

function swingLeaf(job: Job, leaf: JobLeaf, stepDeg: number): SwingLeafDocument | string {
  const question = leafWithPins(job, leaf);
  if (!question.ok) return question.missing;
  const { prepared, placement } = question.value;
  const { travel } = prepared.situation.leaf;
  const series = swingSeries(prepared, placement, toSi(stepDeg, "deg"));
  const range = lengthRange(placement, travel);
  const lever = leastLever(placement, travel);
  const check = prepared.checks.find((one) => one.id === "clearance.leaf");
  const clearance = check === undefined ? null : leastGap(check, placement, travel);
  const turn = bracketTurn(placement, travel);
  const list = (values: Float64Array, convert: (value: number) => number) =>
    Array.from(values, (value) => orNull(value, convert));
  return {
    id: leaf.id,
    thetaDeg: Array.from(series.theta, inDeg),
    pinToPinMm: Array.from(series.pinToPin, inMm),
    leverMm: Array.from(series.lever, inMm),
    clearanceMm: list(series.leafGap, inMm),
    fixedClearanceMm: list(series.fixedGap, inMm),
    toeSpeedMmS: list(series.toeSpeed, inMm),
    lengthClosedMm: inMm(range.closed),
    lengthOpenMm: inMm(range.open),
    lengthMinMm: inMm(range.least),
    lengthMaxMm: inMm(range.greatest),
    leverMinMm: inMm(lever.value),
    leverMinAtDeg: inDeg(lever.atAngle),
    clearanceMinMm: clearance === null ? null : inMm(clearance.gap),
    clearanceMinAtDeg: clearance === null ? null : inDeg(clearance.atAngle),
    monotonic: range.monotonic,
    postBracketTurn: turnDocument(turn.postPin),
    leafBracketTurn: turnDocument(turn.leafPin),
  };
}

const turnDocument = (turn: TurnRange): TurnDocument => ({
  fromDeg: inDeg(turn.from),
  toDeg: inDeg(turn.to),
  throughDeg: inDeg(turn.through),
});
