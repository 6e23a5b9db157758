import { type Placement, turnSign } from "../linkage/pins.ts";
import { type Adjusted, adjust, type Prediction } from "./adjustment.ts";
import { mirroredStarts, quarterStarts, wrapped } from "./mirrored-starts.ts";
import {
  type Measure,
  type MeasuredGate,
  predictReading,
  type Reading,
  turnAt,
  usualStandardError,
} from "./reading.ts";

/** The as-built problem: which readings of which gate, and where the pins were meant to be. */
export interface AsBuiltProblem {
  readonly gate: MeasuredGate;
  /** Planned pins: the first start, the tie-breaker and the source of the rise; never counted as a reading. */
  readonly plan: Placement;
  readonly readings: readonly Reading[];
  /** True: the open angle is a fifth unknown. False: it is that of the travel. */
  readonly openAngleUnknown: boolean;
  readonly iterationLimit: number;
}

/** A placement that fits the readings at least as well as everything near it. */
export interface Solution extends Adjusted {
  /** Straight distance of the unknowns from the plan [m, radians counted as metres]. */
  readonly fromPlan: number;
}

/** Closer than this [m] two answers are one. */
const sameAnswer = 1e-6;
/** Solutions followed up with their own mirror images; real sets of readings have at most eight. */
const followed = 16;
/** chi² that differs by less is a tie, which nearness to the plan decides. */
const tie = 1e-6;

export const standardErrorOf = (reading: Reading): number => reading.standardError ?? usualStandardError;

export function plannedUnknowns(
  problem: Pick<AsBuiltProblem, "plan" | "gate" | "openAngleUnknown">,
): number[] {
  const { postPin, leafPin } = problem.plan;
  const pins = [postPin.along, postPin.out, leafPin.along, leafPin.off];
  return problem.openAngleUnknown ? [...pins, problem.gate.leaf.travel.openAngle] : pins;
}

export function pinsOf(unknowns: readonly number[], rise: number): Placement {
  const [along, out, leafAlong, off] = unknowns as [number, number, number, number];
  return { postPin: { along, out }, leafPin: { along: leafAlong, off }, rise };
}

/** `predictReading` in terms of the vector of unknowns; gradients cut to its length. */
export function predictFrom(
  unknowns: readonly number[],
  measure: Measure,
  problem: Pick<AsBuiltProblem, "plan" | "gate">,
): Prediction {
  const openAngle = unknowns[4] ?? problem.gate.leaf.travel.openAngle;
  const { value, gradient } = predictReading(
    measure,
    pinsOf(unknowns, problem.plan.rise),
    openAngle,
    problem.gate,
  );
  return { value, gradient: gradient.slice(0, unknowns.length) };
}

/** Adjusts from one start; null when the iteration limit is reached. */
export function solveFrom(problem: AsBuiltProblem, start: readonly number[]): Solution | null {
  const adjusted = adjust({
    observed: problem.readings.map((reading) => ({
      value: reading.value,
      standardError: standardErrorOf(reading),
    })),
    predict: (unknowns) => problem.readings.map((reading) => predictFrom(unknowns, reading, problem)),
    start,
    iterationLimit: problem.iterationLimit,
  });
  if (!adjusted.ok) return null;
  const unknowns = adjusted.value.unknowns.map((value, i) => (i === 4 ? wrapped(value) : value));
  return { ...adjusted.value, unknowns, fromPlan: apart(unknowns, plannedUnknowns(problem)) };
}

/**
 * Every distinct solution that the plan and its mirror images lead to, best first.
 *
 * Least chi² first, ties to the one nearest the plan. Where the open angle is unknown, solutions in which
 * the leaf opens the wrong way or beyond half a turn are left out as soon as one is sound. Empty when no
 * start converged within the iteration limit.
 */
export function findSolutions(problem: AsBuiltProblem): Solution[] {
  const found: Solution[] = [];
  const sign = turnSign(problem.gate.leaf.travel);
  const add = (start: readonly number[]): void => {
    const solution = solveFrom(problem, start);
    if (solution !== null && found.every((other) => apart(other.unknowns, solution.unknowns) > sameAnswer))
      found.push(solution);
  };
  for (const start of quarterStarts(plannedUnknowns(problem))) add(start);
  for (let i = 0; i < Math.min(found.length, followed); i++) {
    const { unknowns } = found[i] as Solution;
    for (const start of mirroredStarts(unknowns, turnsUsed(problem, unknowns), sign)) add(start);
  }
  const sound = found.filter(
    ({ unknowns }) => unknowns[4] === undefined || (unknowns[4] > 0 && unknowns[4] < Math.PI),
  );
  return bestFirst(sound.length > 0 ? sound : found);
}

function bestFirst(solutions: readonly Solution[]): Solution[] {
  const least = Math.min(...solutions.map(({ chiSquared }) => chiSquared));
  const rank = ({ chiSquared }: Solution): number => (chiSquared <= least + tie ? least : chiSquared);
  return [...solutions].sort((a, b) => rank(a) - rank(b) || a.fromPlan - b.fromPlan);
}

function turnsUsed(problem: AsBuiltProblem, unknowns: readonly number[]): number[] {
  const openAngle = unknowns[4] ?? problem.gate.leaf.travel.openAngle;
  const turns = problem.readings.flatMap((reading) =>
    reading.kind === "pinToPin" ? [turnAt(reading.leafAt, openAngle, problem.gate.leaf)] : [],
  );
  return [...new Set(turns)];
}

function apart(a: readonly number[], b: readonly number[]): number {
  return Math.hypot(
    ...a.map((value, i) => (i === 4 ? wrapped(value - (b[i] as number)) : value - (b[i] as number))),
  );
}
