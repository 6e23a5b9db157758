import type { Leaf } from "../leaf/leaf.ts";
import type { Placement } from "../linkage/pins.ts";
import type { PostFaces } from "../placement/brackets.ts";
import { usualIterationLimit } from "./adjustment.ts";
import { type Ambiguity, ambiguityOf } from "./ambiguity.ts";
import { type Misread, mostLikelyMisread, type ReadingResidual, residualTest } from "./misread.ts";
import { type MissingReading, unfeltDirections, whatWouldSettle } from "./missing-reading.ts";
import { type PinSpread, pinSpread } from "./pin-spread.ts";
import type { Reading } from "./reading.ts";
import { type ReadingFault, readingFaults } from "./reading-faults.ts";
import {
  type AsBuiltProblem,
  findSolutions,
  pinsOf,
  plannedUnknowns,
  predictFrom,
  type Solution,
  solveFrom,
} from "./solutions.ts";
import { entry, inverse } from "./symmetric-matrix.ts";

/** Tape readings of a gate as built, and what is known about it without a tape. */
export interface AsBuiltReadings {
  readonly leaf: Leaf;
  /** Null when the post's faces are not known; readings from them are then refused. */
  readonly postFaces: PostFaces | null;
  /** Planned pins: where to start looking, and which of two equally good answers to prefer. Never counted as a reading; its rise is taken as known. */
  readonly plan: Placement;
  readonly readings: readonly Reading[];
  /** Estimate the open angle too, from readings taken with the leaf "open"; otherwise it is that of the travel. */
  readonly estimateOpenAngle: boolean;
  /** Adjustment steps allowed from each start; default 500. */
  readonly iterationLimit?: number;
}

/** `noOpenReading`: asked for, but no reading was taken with the leaf open. */
export type OpenAngleAsBuilt =
  | { readonly kind: "estimated"; readonly value: number; readonly standardError: number }
  | { readonly kind: "asStated"; readonly value: number }
  | { readonly kind: "noOpenReading"; readonly value: number };

/** The pins as built (metres, radians), with how sure that is. */
export interface AsBuiltEstimate {
  readonly placement: Placement;
  readonly openAngle: OpenAngleAsBuilt;
  /** One standard error of each pin coordinate [m], from the stated errors of the readings. */
  readonly standardErrors: {
    readonly postPin: { readonly along: number; readonly out: number };
    readonly leafPin: { readonly along: number; readonly off: number };
  };
  readonly postPinSpread: PinSpread;
  readonly leafPinSpread: PinSpread;
  readonly residuals: readonly ReadingResidual[];
  readonly chiSquared: number;
  readonly degreesOfFreedom: number;
  /**
   * Whether chi² is within three standard deviations of what honest readings give (f + 3·√(2f)); null with
   * no reading to spare.
   */
  readonly readingsAgree: boolean | null;
  readonly misread: Misread | null;
  /** Other pins that fit about as well; null when there are none. */
  readonly ambiguity: Ambiguity | null;
}

/** `notSettled`: too few readings, or readings that do not feel some movement of the pins; `chiSquared` > 0 says that they contradict each other as well. */
export type AsBuiltOutcome =
  | { readonly ok: true; readonly value: AsBuiltEstimate }
  | { readonly ok: false; readonly reason: "badReadings"; readonly faults: readonly ReadingFault[] }
  | {
      readonly ok: false;
      readonly reason: "notSettled";
      readonly missing: MissingReading;
      readonly chiSquared: number;
    }
  | { readonly ok: false; readonly reason: "iterationLimit"; readonly iterations: number };

/**
 * Where the two pins really are, from tape readings (rule G18), by weighted least squares.
 *
 * Frame: rules G1, G2, G4; metres and radians. All solutions that mirrored starts lead to are compared:
 * least chi² wins, ties go to the one nearest the plan, and any other that fits about as well is reported.
 * Exact readings give the pins back to better than 1e-9 m. Standard errors are first order, from the stated
 * errors of the readings alone. Expected failures are data. The w-test for a misread reading is Baarda's
 * (data snooping; from memory).
 *
 * ### Example
 *   const leaf = { heel: 0.03, length: 3.6, thickness: 0.05, face: 0.025, boxes: [],
 *     travel: { swing: "toward" as const, openAngle: Math.PI / 2 } };
 *   const plan = { postPin: { along: -0.15, out: 0.15 }, leafPin: { along: 0.9, off: 0.085 }, rise: 0 };
 *   const readings = [
 *     { id: "a", kind: "hingeToPostPin" as const, value: 0.2121 },
 *     { id: "b", kind: "postPinFromClosedLine" as const, value: 0.15 },
 *     { id: "c", kind: "leafPinFromLeafFace" as const, value: 0.06 },
 *     { id: "d", kind: "pinToPin" as const, leafAt: "closed" as const, value: 1.0592 },
 *     { id: "e", kind: "pinToPin" as const, leafAt: "open" as const, value: 0.76 },
 *   ];
 *   const built = estimateAsBuilt({ leaf, postFaces: null, plan, readings, estimateOpenAngle: false });
 *   expect(built.ok && built.value.placement.leafPin.along).toBeCloseTo(0.9072, 4);
 */
export function estimateAsBuilt(question: AsBuiltReadings): AsBuiltOutcome {
  const { leaf, postFaces, plan, readings } = question;
  const gate = { leaf, postFaces };
  const faults = readingFaults(readings, gate, plan.rise);
  if (faults.length > 0) return { ok: false, reason: "badReadings", faults };
  const openRead = readings.some((reading) => reading.kind === "pinToPin" && reading.leafAt === "open");
  const problem: AsBuiltProblem = {
    gate,
    plan,
    readings,
    openAngleUnknown: question.estimateOpenAngle && openRead,
    iterationLimit: question.iterationLimit ?? usualIterationLimit,
  };
  // Where the readings leave something open everywhere, every start ends elsewhere and comparing the ends means nothing.
  const solutions = openEverywhere(problem) ? [] : findSolutions(problem);
  const best = solutions[0] ?? solveFrom(problem, plannedUnknowns(problem));
  if (best === null) return { ok: false, reason: "iterationLimit", iterations: problem.iterationLimit };
  const gradients = best.predictions.map(({ gradient }) => gradient);
  const covariance =
    unfeltDirections(gradients, best.unknowns.length).length > 0 ? null : inverse(best.normal);
  if (covariance === null) {
    return {
      ok: false,
      reason: "notSettled",
      missing: whatWouldSettle(problem, best.unknowns),
      chiSquared: best.chiSquared,
    };
  }
  return { ok: true, value: described(question, problem, best, solutions, covariance) };
}

function described(
  question: AsBuiltReadings,
  problem: AsBuiltProblem,
  best: Solution,
  solutions: readonly Solution[],
  covariance: readonly (readonly number[])[],
): AsBuiltEstimate {
  const error = (i: number): number => Math.sqrt(entry(covariance, i, i));
  const test = residualTest(problem, best, covariance);
  const degreesOfFreedom = problem.readings.length - best.unknowns.length;
  const stated = question.leaf.travel.openAngle;
  const estimated = best.unknowns[4];
  return {
    placement: pinsOf(best.unknowns, question.plan.rise),
    openAngle:
      estimated !== undefined
        ? { kind: "estimated", value: estimated, standardError: error(4) }
        : { kind: question.estimateOpenAngle ? "noOpenReading" : "asStated", value: stated },
    standardErrors: {
      postPin: { along: error(0), out: error(1) },
      leafPin: { along: error(2), off: error(3) },
    },
    postPinSpread: pinSpread(covariance, 0),
    leafPinSpread: pinSpread(covariance, 2),
    residuals: test.residuals,
    chiSquared: best.chiSquared,
    degreesOfFreedom,
    readingsAgree:
      degreesOfFreedom === 0
        ? null
        : best.chiSquared <= degreesOfFreedom + 3 * Math.sqrt(2 * degreesOfFreedom),
    misread: mostLikelyMisread(problem, test, best.unknowns),
    ambiguity: ambiguityOf(problem, solutions),
  };
}

/** True when something is open both at the plan and at an odd place beside it, where no accident of the plan's shape remains. */
function openEverywhere(problem: AsBuiltProblem): boolean {
  const planned = plannedUnknowns(problem);
  const beside = planned.map((value, i) => value + ([0.031, -0.047, 0.059, 0.023, 0.083][i] as number));
  return [planned, beside].every((unknowns) => {
    const gradients = problem.readings.map((reading) => predictFrom(unknowns, reading, problem).gradient);
    return unfeltDirections(gradients, unknowns.length).length > 0;
  });
}
