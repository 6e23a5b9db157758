import { type Measure, type UnknownName, unknownNames, usualStandardError } from "./reading.ts";
import { type AsBuiltProblem, predictFrom, standardErrorOf } from "./solutions.ts";
import { inverse, type Matrix, symmetricEigen, weightedGram } from "./symmetric-matrix.ts";

/** What taking some more readings would give: the largest standard error left [m], or null if the pins would still not be settled. */
export interface FurtherReadings {
  readonly measures: readonly Measure[];
  /** Over all pin coordinates; an open angle counts by how far it moves the leaf pin. */
  readonly largestStandardError: number | null;
}

/** What the readings leave open at a placement, and what would close it. */
export interface MissingReading {
  /** How many readings are missing: the number of independent ways in which the pins can move unnoticed. */
  readonly count: number;
  /** Unknowns that can change without any reading changing. */
  readonly free: readonly UnknownName[];
  /** `count` unit directions in which nothing is felt, each in the order of `unknownNames` [m, rad]. */
  readonly directions: readonly (readonly number[])[];
  /** The `count` readings that settle it best; null when no such set does. With count 0: the one that would help most. */
  readonly best: FurtherReadings | null;
  /** Every kind of single reading, best first; those that would not settle it last. */
  readonly single: readonly FurtherReadings[];
}

/**
 * Below this a direction counts as not felt: an error of 1 mm in a reading would move the pins by a metre.
 * Gradients are direction cosines (and lever arms, for the open angle), so the value has the same meaning everywhere.
 */
const leastFeeling = 1e-3;

/** Directions that the rows of gradients do not feel; independent of how precise each reading is. */
export function unfeltDirections(gradients: Matrix, size: number): (readonly number[])[] {
  const gram = weightedGram(
    gradients,
    gradients.map(() => 1),
    size,
  );
  return symmetricEigen(gram)
    .filter(({ value }) => Math.sqrt(Math.max(value, 0)) < leastFeeling)
    .map(({ vector }) => vector);
}

/** The readings that can be asked for, in the order that breaks ties: the easiest to hold a tape to first. */
export function possibleMeasures(problem: Pick<AsBuiltProblem, "gate">): Measure[] {
  const { leaf, postFaces } = problem.gate;
  const faces: Measure[] =
    postFaces === null ? [] : [{ kind: "postPinFromRamFace" }, { kind: "postPinFromGatewayFace" }];
  return [
    { kind: "pinToPin", leafAt: "closed" },
    { kind: "pinToPin", leafAt: "open" },
    { kind: "hingeToPostPin" },
    { kind: "hingeToLeafPin" },
    ...faces,
    { kind: "leafPinFromLeafFace" },
    { kind: "leafPinFromHeel" },
    { kind: "postPinFromClosedLine" },
    { kind: "pinToPin", leafAt: { angle: leaf.travel.openAngle / 2 } },
  ];
}

/**
 * What the readings leave open when the pins are at `unknowns`, and which readings would settle it (rule G18).
 *
 * Every possible reading (and, where one is not enough, every set of as many as are missing) is tried with a
 * standard error of 2 mm, and ranked by the largest standard error it would leave. Nothing is assumed from
 * the plan: it only says where to look. Holds to first order around `unknowns`.
 */
export function whatWouldSettle(problem: AsBuiltProblem, unknowns: readonly number[]): MissingReading {
  const size = unknowns.length;
  const gradients = problem.readings.map((reading) => predictFrom(unknowns, reading, problem).gradient);
  const weights = problem.readings.map((reading) => standardErrorOf(reading) ** -2);
  const directions = unfeltDirections(gradients, size);
  const felt = (i: number): number => Math.hypot(...directions.map((direction) => direction[i] as number));
  const leafRadius = Math.hypot(unknowns[2] as number, unknowns[3] as number);

  const possible = possibleMeasures(problem).map((measure) => ({
    measure,
    gradient: predictFrom(unknowns, measure, problem).gradient,
  }));
  const after = (added: typeof possible): FurtherReadings => {
    const rows = [...gradients, ...added.map(({ gradient }) => gradient)];
    const measures = added.map(({ measure }) => measure);
    if (unfeltDirections(rows, size).length > 0) return { measures, largestStandardError: null };
    const all = [...weights, ...added.map(() => usualStandardError ** -2)];
    const covariance = inverse(weightedGram(rows, all, size));
    if (covariance === null) return { measures, largestStandardError: null };
    const errors = covariance.map((row, i) => Math.sqrt(row[i] as number) * (i === 4 ? leafRadius : 1));
    return { measures, largestStandardError: Math.max(...errors) };
  };
  const single = ranked(possible.map((one) => after([one])));
  const sets = directions.length <= 1 ? single : ranked(choices(possible, directions.length).map(after));
  const best = sets[0];
  return {
    count: directions.length,
    free: unknownNames.filter((_, i) => i < size && felt(i) > 1e-6),
    directions,
    best: best !== undefined && best.largestStandardError !== null ? best : null,
    single,
  };
}

function ranked(list: readonly FurtherReadings[]): FurtherReadings[] {
  // Rounding must not decide between readings that are equally good; the order they were offered in does.
  const key = ({ largestStandardError }: FurtherReadings): number =>
    largestStandardError === null ? Number.POSITIVE_INFINITY : Math.round(largestStandardError * 1e9);
  return [...list].sort((a, b) => (key(a) === key(b) ? 0 : key(a) - key(b)));
}

function choices<T>(from: readonly T[], count: number): T[][] {
  if (count === 0) return [[]];
  return from.flatMap((first, i) => choices(from.slice(i + 1), count - 1).map((rest) => [first, ...rest]));
}
