import { cholesky, dot, type Matrix, solveCholesky, weightedGram } from "./symmetric-matrix.ts";

/** What a model says that one reading should be, and how that changes with each unknown. */
export interface Prediction {
  readonly value: number;
  readonly gradient: readonly number[];
}

/** A weighted least-squares problem. All unknowns must be of comparable size (here metres, and radians of order one). */
interface AdjustmentProblem {
  readonly observed: readonly { readonly value: number; readonly standardError: number }[];
  readonly predict: (unknowns: readonly number[]) => readonly Prediction[];
  readonly start: readonly number[];
  readonly iterationLimit: number;
}

/** A stationary point of chi², with what a surveyor needs to judge it. */
export interface Adjusted {
  readonly unknowns: readonly number[];
  readonly predictions: readonly Prediction[];
  /** Σ ((value − predicted) / standardError)². */
  readonly chiSquared: number;
  /** Jᵀ W J at the solution, W = 1 / standardError²; its inverse is the covariance of the unknowns. */
  readonly normal: Matrix;
}

type Adjustment =
  | { readonly ok: true; readonly value: Adjusted }
  | { readonly ok: false; readonly reason: "iterationLimit"; readonly iterations: number };

/** Far beyond the ten or so that readings which roughly agree need; contradicting ones converge slowly. */
export const usualIterationLimit = 500;

/**
 * Least-squares adjustment by Gauss–Newton steps with Levenberg's damping.
 *
 * Stops when the step still to take is worth less than 1e-10 of a standard error (in the metric of the
 * unknowns' own covariance), so that the answer does not depend on scale. A direction that no reading
 * feels is left where it started, which the caller finds in `normal`. At the iteration limit it says so
 * and returns no guess. Source: Gauss–Newton and Levenberg as in any text on nonlinear least squares
 * (from memory); method of distance readings: jerrymahun.com, "distance intersection".
 */
export function adjust(problem: AdjustmentProblem): Adjustment {
  const weights = problem.observed.map(({ standardError }) => 1 / standardError ** 2);
  const scale = problem.observed.reduce(
    (sum, { value, standardError }) => sum + (value / standardError) ** 2,
    0,
  );
  // The second term is what rounding leaves of the first when standard errors are tiny beside the readings.
  const negligible = Math.max(1e-20, 1e-28 * scale);
  let state = evaluate(problem, weights, problem.start);
  let damping = 1e-3;
  let growth = 2;
  for (let iteration = 0; iteration < problem.iterationLimit; iteration++) {
    if (state.toGo <= negligible) {
      const { unknowns, predictions, chiSquared, normal } = state;
      return { ok: true, value: { unknowns, predictions, chiSquared, normal } };
    }
    const step = dampedStep(state.normal, state.downhill, damping);
    const trial = evaluate(
      problem,
      weights,
      state.unknowns.map((value, i) => value + (step[i] as number)),
    );
    const gain = state.chiSquared - trial.chiSquared;
    const rounding = 1e-13 * (1 + state.chiSquared);
    // The last steps change chi² by less than its last digit; there the step still to go is the better judge.
    if (gain > rounding || (gain >= -rounding && trial.toGo < state.toGo)) {
      // Nielsen's rule: damping follows how well the linear model foretold the gain, which keeps it from swinging
      // to and fro where readings contradict each other.
      const foretold = dot(step, state.downhill) + damping * largestDiagonal(state.normal) * dot(step, step);
      if (gain > rounding)
        damping = Math.max(leastDamping, damping * Math.max(1 / 10, 1 - (2 * (gain / foretold) - 1) ** 3));
      growth = 2;
      state = trial;
    } else {
      damping *= growth;
      growth *= 2;
    }
  }
  return { ok: false, reason: "iterationLimit", iterations: problem.iterationLimit };
}

/** Damping at which a step is a Gauss–Newton step, and a direction that no reading feels still has a finite one. */
const leastDamping = 1e-12;

interface State extends Adjusted {
  /** Jᵀ W (value − predicted). */
  readonly downhill: readonly number[];
  /** The whole step that the linear model asks for, in squared standard errors of the unknowns. */
  readonly toGo: number;
}

function evaluate(
  problem: AdjustmentProblem,
  weights: readonly number[],
  unknowns: readonly number[],
): State {
  const predictions = problem.predict(unknowns);
  const downhill = new Array<number>(unknowns.length).fill(0);
  let chiSquared = 0;
  predictions.forEach(({ value, gradient }, k) => {
    const residual = (problem.observed[k] as { value: number }).value - value;
    const weighted = (weights[k] as number) * residual;
    chiSquared += weighted * residual;
    for (let i = 0; i < downhill.length; i++)
      downhill[i] = (downhill[i] as number) + weighted * (gradient[i] as number);
  });
  const rows = predictions.map(({ gradient }) => gradient);
  const normal = weightedGram(rows, weights, unknowns.length);
  const toGo = dot(dampedStep(normal, downhill, leastDamping), downhill);
  return { unknowns, predictions, chiSquared, normal, downhill, toGo };
}

const largestDiagonal = (normal: Matrix): number =>
  normal.reduce((most, row, i) => Math.max(most, row[i] as number), 0);

/** Solves (N + damping · largest diagonal of N) step = downhill; positive definite for any damping above rounding. */
function dampedStep(normal: Matrix, downhill: readonly number[], damping: number): number[] {
  const added = damping * largestDiagonal(normal);
  if (added === 0) return downhill.map(() => 0);
  const lower = cholesky(normal.map((row, i) => row.map((value, j) => (i === j ? value + added : value))));
  if (lower === null) throw new RangeError("adjust expected finite predictions and gradients");
  return solveCholesky(lower, downhill);
}
