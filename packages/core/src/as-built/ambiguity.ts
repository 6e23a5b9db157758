import type { Placement } from "../linkage/pins.ts";
import { possibleMeasures } from "./missing-reading.ts";
import type { Measure } from "./reading.ts";
import { type AsBuiltProblem, pinsOf, predictFrom, type Solution } from "./solutions.ts";

/** Pins that fit the readings about as well as the chosen ones. */
export interface OtherSolution {
  readonly placement: Placement;
  /** Open angle of this solution [rad]; null when it was not an unknown. */
  readonly openAngle: number | null;
  readonly chiSquared: number;
}

/** Two or more answers that the readings cannot tell apart, and the reading that tells them apart best. */
export interface Ambiguity {
  /** Nearest to the plan first. */
  readonly others: readonly OtherSolution[];
  /** Null when no possible reading would differ. */
  readonly settledBy: {
    readonly measure: Measure;
    /** What it would read for the chosen pins, and for each of `others` [m]. */
    readonly chosen: number;
    readonly others: readonly number[];
  } | null;
}

/** Two answers whose chi² differ by less are about equally good: three standard errors' worth, as in the test for a misread. */
const aboutEqual = 9;
/** A reading that differs by less [m] settles nothing. */
const tellsApart = 1e-6;

/** What else fits about as well as the first of `solutions`; null when nothing does. */
export function ambiguityOf(problem: AsBuiltProblem, solutions: readonly Solution[]): Ambiguity | null {
  const [chosen, ...rest] = solutions;
  if (chosen === undefined) return null;
  const others = rest
    .filter(({ chiSquared }) => chiSquared < chosen.chiSquared + aboutEqual)
    .sort((a, b) => a.fromPlan - b.fromPlan);
  if (others.length === 0) return null;
  const read = (measure: Measure, solution: Solution): number =>
    predictFrom(solution.unknowns, measure, problem).value;
  let settledBy: Ambiguity["settledBy"] = null;
  let widest = tellsApart;
  for (const measure of possibleMeasures(problem)) {
    const ofChosen = read(measure, chosen);
    const ofOthers = others.map((other) => read(measure, other));
    const apart = Math.min(...ofOthers.map((value) => Math.abs(value - ofChosen)));
    // A micrometre more is no reason to prefer a reading that is harder to take.
    if (apart > widest + 1e-6) {
      widest = apart;
      settledBy = { measure, chosen: ofChosen, others: ofOthers };
    }
  }
  return {
    others: others.map(({ unknowns, chiSquared }) => ({
      placement: pinsOf(unknowns, problem.plan.rise),
      openAngle: unknowns[4] ?? null,
      chiSquared,
    })),
    settledBy,
  };
}
