import type { Crank } from "./pin-to-pin.ts";
import { crankOf, deadCentreAngles, trueLength } from "./pin-to-pin.ts";
import type { Placement, Travel } from "./pins.ts";

/** A value and the leaf angle θ [rad] at which it occurs. */
export interface AtAngle {
  readonly value: number;
  readonly atAngle: number;
}

/** Lever arm at ψ (rule G6). Zero at dead centre. */
export function leverAtPsi(crank: Crank, psi: number): number {
  const length = trueLength(crank, psi);
  if (length === 0) return 0;
  return (crank.postRadius * crank.leafRadius * Math.abs(Math.sin(psi))) / length;
}

/**
 * Lever arm r = |dL/dφ| at leaf angle θ [m]: torque about the hinge axis = thrust × r, leaf turning speed
 * = rod speed ÷ r (rule G6). With a rise it is that of the true length, so the same two laws hold.
 *
 * Accuracy: closed form. Source: virtual work on L(φ); see reference/linkage.
 *
 * ### Example
 *   const placement = { postPin: { along: -0.15, out: 0.15 }, leafPin: { along: 0.9072, off: 0.085 }, rise: 0 };
 *   const travel = { swing: "toward" as const, openAngle: Math.PI / 2 };
 *   expect(leverArm(placement, travel, 0)).toBeCloseTo(0.1405, 4);
 */
export function leverArm(placement: Placement, travel: Travel, theta: number): number {
  const crank = crankOf(placement, travel);
  return leverAtPsi(crank, crank.closedAngle + crank.angleSign * theta);
}

/**
 * Least lever arm over the whole travel and where (rule G10).
 *
 * Why only the ends and dead centres need looking at: r²(cos ψ) = ρ²g²(1 − c²)/(ρ² + g² + rise² − 2ρgc) has
 * one stationary point in −1 < c < 1 (the two roots of its derivative multiply to 1) and it is a maximum.
 *
 * ### Example
 *   const placement = { postPin: { along: -0.2, out: 0.16 }, leafPin: { along: 0.9112, off: 0.085 }, rise: 0 };
 *   const least = leastLever(placement, { swing: "toward", openAngle: Math.PI / 2 });
 *   expect(least.value).toBeCloseTo(0.1462, 4);
 *   expect(least.atAngle).toBe(0);
 */
export function leastLever(placement: Placement, travel: Travel): AtAngle {
  const crank = crankOf(placement, travel);
  const dead = deadCentreAngles(crank)[0];
  if (dead !== undefined) return { value: 0, atAngle: dead };
  const closed = leverAtPsi(crank, crank.closedAngle);
  const open = leverAtPsi(crank, crank.closedAngle + crank.angleSign * crank.openAngle);
  return closed <= open ? { value: closed, atAngle: 0 } : { value: open, atAngle: crank.openAngle };
}

/**
 * Greatest lever arm over the whole travel and where; in closed form, see `leastLever`.
 *
 * ### Example
 *   const placement = { postPin: { along: -0.15, out: 0.15 }, leafPin: { along: 0.9072, off: 0.085 }, rise: 0 };
 *   const greatest = greatestLever(placement, { swing: "toward", openAngle: Math.PI / 2 });
 *   expect(greatest.value).toBeCloseTo(0.2121, 4);
 */
export function greatestLever(placement: Placement, travel: Travel): AtAngle {
  const crank = crankOf(placement, travel);
  const { postRadius: rho, leafRadius: g } = crank;
  const psiOpen = crank.closedAngle + crank.angleSign * crank.openAngle;
  const atClosed = leverAtPsi(crank, crank.closedAngle);
  const atOpen = leverAtPsi(crank, psiOpen);
  let best: AtAngle =
    atClosed >= atOpen ? { value: atClosed, atAngle: 0 } : { value: atOpen, atAngle: crank.openAngle };
  const product = 2 * rho * g;
  if (product === 0) return best;
  const sum = rho * rho + g * g + crank.rise * crank.rise;
  const peak = Math.acos((sum - Math.sqrt(Math.max(sum * sum - product * product, 0))) / product);
  for (const sign of [1, -1]) {
    for (let turns = -2; turns <= 2; turns++) {
      const theta = (sign * peak + turns * 2 * Math.PI - crank.closedAngle) * crank.angleSign;
      if (theta <= 0 || theta >= crank.openAngle) continue;
      const value = leverAtPsi(crank, crank.closedAngle + crank.angleSign * theta);
      if (value > best.value) best = { value, atAngle: theta };
    }
  }
  return best;
}
