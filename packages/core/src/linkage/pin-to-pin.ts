import type { Placement, Travel } from "./pins.ts";
import { turnSign } from "./pins.ts";

/**
 * The polar constants of the linkage (rule G5): L² = ρ² + g² − 2ρg·cos ψ + rise², where ψ = α − γ − φ is
 * the angle at the hinge from the leaf pin to the post pin.
 */
export interface Crank {
  /** Hinge axis to post pin [m]. */
  readonly postRadius: number;
  /** Hinge axis to leaf pin [m]. */
  readonly leafRadius: number;
  /** ψ with the leaf closed [rad], in (−2π, 2π). */
  readonly closedAngle: number;
  /** dψ/dθ: −1 toward, +1 away. */
  readonly angleSign: 1 | -1;
  readonly rise: number;
  /** Travel of the leaf [rad]. */
  readonly openAngle: number;
}

/** The polar constants of a placement. Pure algebra; exact to rounding. */
export function crankOf(placement: Placement, travel: Travel): Crank {
  const { along, out } = placement.postPin;
  const { along: d, off } = placement.leafPin;
  return {
    postRadius: Math.hypot(along, out),
    leafRadius: Math.hypot(d, off),
    closedAngle: Math.atan2(out, along) - Math.atan2(off, d),
    angleSign: turnSign(travel) === 1 ? -1 : 1,
    rise: placement.rise,
    openAngle: travel.openAngle,
  };
}

/** True pin-to-pin length at ψ [m]. A square root, since `Math.hypot` is several times slower and lengths of metres do not overflow. */
export function trueLength(crank: Crank, psi: number): number {
  const plan = planLength(crank, psi);
  return Math.sqrt(plan * plan + crank.rise * crank.rise);
}

/** Pin-to-pin length at ψ, in plan (rise left out) [m]. */
export function planLength(crank: Crank, psi: number): number {
  const { postRadius: rho, leafRadius: g } = crank;
  // (ρ − g)² + 4ρg·sin²(ψ/2) loses nothing to cancellation when the pins come close.
  const half = Math.sin(psi / 2);
  return Math.sqrt((rho - g) * (rho - g) + 4 * rho * g * half * half);
}

/**
 * Pin-to-pin length of the ram at leaf angle θ: the true length in three dimensions (rules G4, G5).
 *
 * Frame: rule G1, metres; θ from closed [rad], any finite value.
 * Accuracy: closed form, a few units in the last place.
 *
 * ### Example
 *   const placement = { postPin: { along: -0.15, out: 0.15 }, leafPin: { along: 0.9072, off: 0.085 }, rise: 0 };
 *   const travel = { swing: "toward" as const, openAngle: Math.PI / 2 };
 *   expect(pinToPin(placement, travel, 0)).toBeCloseTo(1.0592, 4);
 *   expect(pinToPin(placement, travel, Math.PI / 2)).toBeCloseTo(0.76, 4);
 */
export function pinToPin(placement: Placement, travel: Travel, theta: number): number {
  const crank = crankOf(placement, travel);
  return trueLength(crank, crank.closedAngle + crank.angleSign * theta);
}

/** Extremes of the pin-to-pin length over the travel. Angles are leaf angles θ [rad], lengths [m]. */
export interface LengthRange {
  readonly closed: number;
  readonly open: number;
  readonly least: number;
  readonly leastAt: number;
  readonly greatest: number;
  readonly greatestAt: number;
  /** Length only grows or only shrinks over the whole travel, with no dead centre at either end (rule G6). */
  readonly monotonic: boolean;
}

/**
 * Leaf angles inside [0, openAngle] at which ψ is a whole multiple of π, i.e. the thrust line passes
 * through the hinge axis. At most one for a travel below π.
 */
export function deadCentreAngles(crank: Crank): number[] {
  if (crank.postRadius === 0 || crank.leafRadius === 0) return [0];
  const at: number[] = [];
  for (let k = -3; k <= 3; k++) {
    const theta = (k * Math.PI - crank.closedAngle) * crank.angleSign;
    if (theta >= 0 && theta <= crank.openAngle) at.push(theta);
  }
  return at;
}

/**
 * Least and greatest pin-to-pin length over the whole travel, in closed form (rule G5): the ends, and
 * dead centres where they fall inside.
 *
 * ### Example
 *   const placement = { postPin: { along: -0.2, out: 0.16 }, leafPin: { along: 0.9112, off: 0.085 }, rise: 0 };
 *   const range = lengthRange(placement, { swing: "toward", openAngle: Math.PI / 2 });
 *   expect(range.greatest).toBeCloseTo(1.1137, 4);
 *   expect(range.least).toBeCloseTo(0.76, 4);
 *   expect(range.monotonic).toBe(true);
 */
export function lengthRange(placement: Placement, travel: Travel): LengthRange {
  const crank = crankOf(placement, travel);
  const length = (theta: number) => trueLength(crank, crank.closedAngle + crank.angleSign * theta);
  const dead = deadCentreAngles(crank);
  let least = Number.POSITIVE_INFINITY;
  let greatest = 0;
  let leastAt = 0;
  let greatestAt = 0;
  for (const theta of [0, crank.openAngle, ...dead]) {
    const value = length(theta);
    if (value < least) [least, leastAt] = [value, theta];
    if (value > greatest) [greatest, greatestAt] = [value, theta];
  }
  return {
    closed: length(0),
    open: length(crank.openAngle),
    least,
    leastAt,
    greatest,
    greatestAt,
    monotonic: dead.length === 0,
  };
}
