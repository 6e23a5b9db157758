import type { AtAngle } from "./lever-arm.ts";
import type { Crank } from "./pin-to-pin.ts";
import { crankOf, deadCentreAngles, planLength } from "./pin-to-pin.ts";
import type { Placement, Travel } from "./pins.ts";

/** Angle at the leaf pin between the thrust line and the line to the hinge, as between lines: 0 … π/2. */
function angleAtLeafPin(crank: Crank, psi: number): number {
  const { postRadius: rho, leafRadius: g } = crank;
  if (planLength(crank, psi) === 0) return 0;
  return Math.atan2(rho * Math.abs(Math.sin(psi)), Math.abs(g - rho * Math.cos(psi)));
}

/**
 * How far the ram stays from dead centre: the least angle over the travel between the thrust line and the
 * line from the hinge axis to the leaf pin, in plan [rad] (rule G10). Zero at dead centre.
 *
 * Only the ends and dead centres need looking at: sin of that angle is the lever arm ÷ leaf-pin radius.
 *
 * ### Example
 *   const placement = { postPin: { along: -0.15, out: 0.2 }, leafPin: { along: 0.9, off: 0.06 }, rise: 0 };
 *   const least = leastThrustAngle(placement, { swing: "toward", openAngle: Math.PI / 2 });
 *   expect((least.value * 180) / Math.PI).toBeCloseTo(11.14, 2);
 */
export function leastThrustAngle(placement: Placement, travel: Travel): AtAngle {
  const crank = crankOf(placement, travel);
  const dead = deadCentreAngles(crank)[0];
  if (dead !== undefined) return { value: 0, atAngle: dead };
  const closed = angleAtLeafPin(crank, crank.closedAngle);
  const open = angleAtLeafPin(crank, crank.closedAngle + crank.angleSign * crank.openAngle);
  return closed <= open ? { value: closed, atAngle: 0 } : { value: open, atAngle: crank.openAngle };
}
