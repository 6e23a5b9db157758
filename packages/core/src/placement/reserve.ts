import type { Placement } from "../linkage/pins.ts";
import { turnSign } from "../linkage/pins.ts";
import type { Limit } from "./limit.ts";
import type { Prepared } from "./limits.ts";
import { limitsOf, prepare } from "./limits.ts";
import type { Situation } from "./situation.ts";
import type { Pins, SlackFunction } from "./slack-function.ts";
import { newSlope, orientationOf } from "./slack-function.ts";
import { slackFunctions } from "./slack-functions.ts";
import { reserveAtTurn } from "./worst-error.ts";

/** What goes first when the pins are off by more than the reserve. */
export interface FirstToBreak {
  readonly limit: string;
  /** Leaf angle θ at which it breaks [rad]; null when the limit was broken to begin with and names no angle. */
  readonly atAngle: number | null;
  /** The pin errors that break it, as multiples of the reserve (±1; between where a worse error lies inside). */
  readonly direction: {
    readonly postAlong: number;
    readonly postOut: number;
    readonly leafAlong: number;
    readonly leafOff: number;
  } | null;
}

/** The reserve of a placement (rule G11). */
export interface Reserve {
  /** Every limit holds at the nominal pins. */
  readonly feasible: boolean;
  /** Largest error in every pin coordinate at once that keeps every limit [m]; negative when one is broken already. */
  readonly reserve: number;
  /** True when the negative figure is a share of a limit, because no limit in millimetres is broken (then 0.001 = 1). */
  readonly asShareOfLimit: boolean;
  readonly firstToBreak: FirstToBreak | null;
}

/** No tape job is set out this badly; limits that survive more are not told apart. */
export const reserveCeiling = 0.5;

const angleSamples = 33;

export const pinsOf = (placement: Placement): Pins =>
  Float64Array.of(
    placement.postPin.along,
    placement.postPin.out,
    placement.leafPin.along,
    placement.leafPin.off,
  );

export const placementOf = (pins: Pins, rise: number): Placement => ({
  postPin: { along: pins[0] as number, out: pins[1] as number },
  leafPin: { along: pins[2] as number, off: pins[3] as number },
  rise,
});

/**
 * The reserve of a placement (rule G11): the largest ε such that with each of the four pin coordinates off by
 * at most ±ε every limit still holds over the whole travel.
 *
 * Frame: rule G1; metres. Infeasible: minus the largest broken slack (see `Reserve`). Limits that are not
 * checked (force) do not count. Capped at `reserveCeiling`.
 * Accuracy: within 0.01 mm of the exact supremum, checked against sampled errors and an independent brute
 * force (reserve.property.test.ts, reference/placement).
 *
 * ### Example
 *   const { situation, tight, roomy } = workedExample;
 *   expect(reserveOf(situation, tight).reserve).toBeCloseTo(-0.0177, 4);
 *   expect(reserveOf(situation, roomy).reserve).toBeGreaterThan(0.024);
 */
export function reserveOf(situation: Situation | Prepared, placement: Placement): Reserve {
  const prepared = "checks" in situation ? situation : prepare(situation);
  const limits = limitsOf(prepared, placement);
  return brokenReserve(limits) ?? feasibleReserve(prepared, placement);
}

/** The negative reserve of a placement whose limits do not all hold; null when they do. */
export function brokenReserve(limits: readonly Limit[]): Reserve | null {
  const broken = limits.filter((limit) => limit.state === "fail");
  if (broken.length === 0) return null;
  const inMetres = broken.filter((limit) => limit.unit === "m");
  const size = (limit: Limit) =>
    inMetres.length > 0 ? -(limit.slack ?? 0) : (-(limit.slack ?? 0) / (limit.limit || 1)) * 1e-3;
  const worst = (inMetres.length > 0 ? inMetres : broken).reduce((a, b) => (size(b) > size(a) ? b : a));
  return {
    feasible: false,
    reserve: -size(worst),
    asShareOfLimit: inMetres.length === 0,
    firstToBreak: { limit: worst.id, atAngle: worst.atAngle, direction: null },
  };
}

/** The reserve of a placement that is known to keep every limit at its nominal pins. */
export function feasibleReserve(prepared: Prepared, placement: Placement): Reserve {
  const pins = pinsOf(placement);
  const travel = prepared.situation.leaf.travel;
  const end = turnSign(travel) * travel.openAngle;
  const first = { id: "", phi: 0, error: new Float64Array(4) };
  let reserve = reserveCeiling;
  const error = new Float64Array(4);
  const slope = newSlope();
  // Looked at up to `ceiling` only; while a least value is being closed in on, values above the best count too.
  const tryTurn = (f: SlackFunction, phi: number, ceiling: number): number => {
    const found = reserveAtTurn(f, pins, ceiling, Math.cos(phi), Math.sin(phi), error, slope);
    if (found < reserve) {
      reserve = found;
      first.id = f.id;
      first.phi = phi;
      first.error.set(error);
    }
    return found;
  };
  const functions = slackFunctions(prepared, placement.rise, orientationOf(pins), false);
  for (const f of functions) {
    if (!f.endsOnly) continue;
    tryTurn(f, 0, reserve);
    tryTurn(f, end, reserve);
  }
  // The likeliest to break come first, so that the rest is ruled out by one look each.
  const candidates = functions
    .filter((f) => !f.endsOnly)
    .flatMap((f) => promisingTurns(f, pins, end, reserve));
  candidates.sort((a, b) => a.estimate - b.estimate);
  for (const { f, estimate, from, at, to } of candidates) {
    if (isOutOfQuestion(estimate, reserve)) break;
    leastAround((phi) => tryTurn(f, phi, reserveCeiling), from, at, to);
  }
  const scale = Math.max(reserve, 1e-9);
  const [a, b, c, d] = [0, 1, 2, 3].map((j) => Math.max(-1, Math.min(1, (first.error[j] as number) / scale)));
  return {
    feasible: true,
    reserve,
    asShareOfLimit: false,
    firstToBreak:
      first.id === ""
        ? null
        : {
            limit: first.id,
            atAngle: Math.abs(first.phi),
            direction: {
              postAlong: a as number,
              postOut: b as number,
              leafAlong: c as number,
              leafOff: d as number,
            },
          },
  };
}

interface Candidate {
  readonly f: SlackFunction;
  readonly estimate: number;
  readonly from: number;
  readonly at: number;
  readonly to: number;
}

/** The estimate is linear in the error and taken at samples; a quarter and 2 mm more allow for both. */
const isOutOfQuestion = (estimate: number, reserve: number) => estimate > 1.25 * reserve + 0.002;

/**
 * Ranges of φ around the local minima of the first-order reserve that could still lie below `least`. Between
 * two samples it is taken to fall as low as their tangents meet: a corner that swings past another does so.
 */
function promisingTurns(f: SlackFunction, pins: Pins, end: number, least: number): Candidate[] {
  const slope = newSlope();
  const estimate = new Float64Array(angleSamples);
  const rate = new Float64Array(angleSamples);
  const step = end / (angleSamples - 1);
  for (let i = 0; i < angleSamples; i++) {
    const phi = step * i;
    const slack = f.evaluate(pins, Math.cos(phi), Math.sin(phi), slope);
    let steep = 1e-12;
    for (let j = 0; j < 4; j++) steep += Math.abs(slope[j] as number);
    estimate[i] = slack === Number.POSITIVE_INFINITY ? slack : slack / steep;
    rate[i] = ((slope[4] as number) * step) / steep;
  }
  const meeting = (i: number): number => {
    const [a, b] = [estimate[i] as number, estimate[i + 1] as number];
    const [fall, rise] = [-(rate[i] as number), rate[i + 1] as number];
    if (!(fall > 0 && rise > 0) || a + b === Number.POSITIVE_INFINITY) return Math.min(a, b);
    return Math.min(a, b, (a * rise + b * fall - fall * rise) / (fall + rise));
  };
  const candidates: Candidate[] = [];
  for (let i = 0; i < angleSamples; i++) {
    const here = estimate[i] as number;
    const before = i > 0 ? (estimate[i - 1] as number) : Number.POSITIVE_INFINITY;
    const after = i + 1 < angleSamples ? (estimate[i + 1] as number) : Number.POSITIVE_INFINITY;
    if (here > before || here >= after) continue;
    const low = Math.min(i > 0 ? meeting(i - 1) : here, i + 1 < angleSamples ? meeting(i) : here);
    if (isOutOfQuestion(low, least)) continue;
    candidates.push({
      f,
      estimate: low,
      from: step * Math.max(0, i - 1),
      at: step * i,
      to: step * Math.min(angleSamples - 1, i + 1),
    });
  }
  return candidates;
}

/**
 * Descends to the least value between `from` and `to`, from their middle sample on, by parabolas through
 * three points (golden section where a parabola does not help). The callback keeps the least it has seen.
 */
function leastAround(value: (at: number) => number, from: number, middle: number, to: number): void {
  let [a, x, b] = [from, middle, to];
  let atX = value(x);
  let atA = x === a ? atX : value(a);
  let atB = x === b ? atX : value(b);
  if (x === a || x === b) {
    // At an end of the travel the least is the end itself unless the value falls from there inward.
    const inner = x + 0.06 * (a + b - 2 * x);
    const atInner = value(inner);
    if (atInner >= atX) return;
    [x, atX] = [inner, atInner];
  }
  for (let step = 0; step < 24 && Math.abs(b - a) > 5e-5; step++) {
    const p = (x - a) * (atX - atB);
    const q = (x - b) * (atX - atA);
    let next = x - 0.5 * (((x - a) * p - (x - b) * q) / (p - q));
    const margin = 0.02 * Math.abs(b - a);
    const inside = Math.min(a, b) + margin < next && next < Math.max(a, b) - margin;
    if (!inside || Math.abs(next - x) < 1e-5) {
      next = Math.abs(b - x) > Math.abs(x - a) ? x + 0.382 * (b - x) : x - 0.382 * (x - a);
    }
    const atNext = value(next);
    const beyond = (next - x) * (b - a) > 0;
    if (atNext < atX) {
      if (beyond) [a, atA] = [x, atX];
      else [b, atB] = [x, atX];
      [x, atX] = [next, atNext];
    } else if (beyond) [b, atB] = [next, atNext];
    else [a, atA] = [next, atNext];
    if (Math.max(atA, atB) - atX < 1e-7) return;
  }
}
