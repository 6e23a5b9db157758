import { type Slip, slipsThatExplain } from "./slip.ts";
import {
  type AsBuiltProblem,
  findSolutions,
  predictFrom,
  type Solution,
  standardErrorOf,
} from "./solutions.ts";
import { dot, inverse, type Matrix, times } from "./symmetric-matrix.ts";

/** How one reading fits the adjusted pins. */
export interface ReadingResidual {
  readonly id: string;
  /** As read, as the adjusted pins would give it, and value − predicted [m]. */
  readonly value: number;
  readonly predicted: number;
  readonly residual: number;
  /** Residual ÷ its own standard deviation after adjustment (w-test); null when the others hardly check it (redundancy < 0.001). */
  readonly normalised: number | null;
  /** Share of an error in this reading that shows in its own residual, 0 (unchecked) to 1. */
  readonly redundancy: number;
}

/** A reading under suspicion, with what it should have been according to all the others. */
export interface Suspect {
  readonly id: string;
  readonly value: number;
  readonly normalised: number;
  /** [m]; null when the others alone lead to no answer within the iteration limit. */
  readonly expected: { readonly value: number; readonly standardError: number } | null;
  readonly slips: readonly Slip[];
}

/**
 * The reading most likely misread. `oneOf`: the suspects' residuals always move together, so the readings
 * cannot tell which of them is wrong; only measuring again (or another kind of reading) can.
 */
export type Misread =
  | { readonly kind: "reading"; readonly suspect: Suspect }
  | { readonly kind: "oneOf"; readonly suspects: readonly Suspect[] };

/** Normalised residual beyond which a reading is suspected (rule G18). */
const suspicious = 3;
/**
 * Below this redundancy an error would have to pass about a hundred millimetres to be noticed, and the curvature
 * of the tape's circle shows in the residual as much as the error does: no other reading checks it in practice.
 */
const unchecked = 1e-3;
/** Residuals correlated beyond this cannot be told apart in practice. */
const inseparable = 0.995;

/** Residuals with their w-test, and the covariance of the residuals that it rests on. `covariance` is that of the unknowns. */
export function residualTest(
  problem: AsBuiltProblem,
  solution: Solution,
  covariance: Matrix,
): { readonly residuals: ReadingResidual[]; readonly correlation: (i: number, j: number) => number } {
  const gradients = solution.predictions.map(({ gradient }) => gradient);
  const spread = (i: number, j: number): number => {
    const shared = dot(
      gradients[i] as readonly number[],
      times(covariance, gradients[j] as readonly number[]),
    );
    return (
      (i === j ? standardErrorOf(problem.readings[i] as AsBuiltProblem["readings"][number]) ** 2 : 0) - shared
    );
  };
  const residuals = problem.readings.map((reading, i): ReadingResidual => {
    const predicted = solution.predictions[i]?.value as number;
    const residual = reading.value - predicted;
    const redundancy = Math.min(1, Math.max(0, spread(i, i) / standardErrorOf(reading) ** 2));
    const normalised = redundancy < unchecked ? null : residual / Math.sqrt(spread(i, i));
    return { id: reading.id, value: reading.value, predicted, residual, normalised, redundancy };
  });
  return { residuals, correlation: (i, j) => spread(i, j) / Math.sqrt(spread(i, i) * spread(j, j)) };
}

/** The reading with the largest normalised residual beyond 3, with every other that cannot be told from it; null when none is. */
export function mostLikelyMisread(
  problem: AsBuiltProblem,
  test: ReturnType<typeof residualTest>,
  near: readonly number[],
): Misread | null {
  const size = (i: number): number => Math.abs(test.residuals[i]?.normalised ?? 0);
  const order = test.residuals.map((_, i) => i).sort((a, b) => size(b) - size(a));
  const first = order[0];
  if (first === undefined || size(first) <= suspicious) return null;
  const together = order.filter(
    (i) => i === first || (size(i) > 0 && Math.abs(test.correlation(first, i)) > inseparable),
  );
  const suspects = together.map((i) => suspect(problem, test.residuals[i] as ReadingResidual, i, near));
  return suspects.length === 1
    ? { kind: "reading", suspect: suspects[0] as Suspect }
    : { kind: "oneOf", suspects };
}

function suspect(
  problem: AsBuiltProblem,
  residual: ReadingResidual,
  index: number,
  near: readonly number[],
): Suspect {
  const { id, value, normalised } = residual;
  const expected = expectedWithout(problem, index, near);
  const reading = problem.readings[index] as AsBuiltProblem["readings"][number];
  const slips =
    expected === null
      ? []
      : slipsThatExplain(value, expected.value, Math.hypot(expected.standardError, standardErrorOf(reading)));
  return { id, value, normalised: normalised as number, expected, slips };
}

/** What reading `index` should be according to the others, at their solution nearest to `near` among equally good ones. */
function expectedWithout(
  problem: AsBuiltProblem,
  index: number,
  near: readonly number[],
): Suspect["expected"] {
  const others = problem.readings.filter((_, i) => i !== index);
  const apart = ({ unknowns }: Solution): number =>
    Math.hypot(...unknowns.map((value, i) => value - (near[i] as number)));
  const solutions = findSolutions({ ...problem, readings: others });
  const least = Math.min(...solutions.map(({ chiSquared }) => chiSquared));
  const [nearest] = solutions
    .filter(({ chiSquared }) => chiSquared < least + 9)
    .sort((a, b) => apart(a) - apart(b));
  const covariance = nearest && inverse(nearest.normal);
  if (!nearest || !covariance) return null;
  const { value, gradient } = predictFrom(
    nearest.unknowns,
    problem.readings[index] as AsBuiltProblem["readings"][number],
    problem,
  );
  return { value, standardError: Math.sqrt(Math.max(0, dot(gradient, times(covariance, gradient)))) };
}
