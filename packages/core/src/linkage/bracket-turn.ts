import { crankOf } from "./pin-to-pin.ts";
import type { Placement, Travel } from "./pins.ts";
import { turnSign } from "./pins.ts";

/** A range of directions [rad], and how far apart its ends are. */
export interface TurnRange {
  readonly from: number;
  readonly to: number;
  readonly through: number;
}

/**
 * How far the ram turns in its two brackets over the travel (rule G8).
 *
 * `postPin`: direction from post pin to leaf pin against +along, fixed frame. `leafPin`: the same direction
 * against the leaf. Radians, counter-clockwise; each range is continuous (not wrapped).
 * Closed form: the turning rates ½ ± (g² − ρ²)/2ℓ² vanish at cos ψ = g/ρ and cos ψ = ρ/g.
 *
 * ### Example
 *   const placement = { postPin: { along: -0.15, out: 0.15 }, leafPin: { along: 0.9072, off: 0.085 }, rise: 0 };
 *   const turn = bracketTurn(placement, { swing: "toward", openAngle: Math.PI / 2 });
 *   expect((turn.postPin.through * 180) / Math.PI).toBeGreaterThan(80);
 *   expect((turn.leafPin.through * 180) / Math.PI).toBeLessThan(15);
 */
export function bracketTurn(
  placement: Placement,
  travel: Travel,
): { readonly postPin: TurnRange; readonly leafPin: TurnRange } {
  const crank = crankOf(placement, travel);
  const { postRadius: rho, leafRadius: g } = crank;
  const sign = turnSign(travel);
  const { along, out } = placement.postPin;
  const gamma = Math.atan2(placement.leafPin.off, placement.leafPin.along);
  const direction = (theta: number) => {
    const angle = gamma + sign * theta;
    return Math.atan2(g * Math.sin(angle) - out, g * Math.cos(angle) - along);
  };
  const interesting = (ratio: number): number[] => {
    if (!(Math.abs(ratio) < 1)) return [];
    const psi = Math.acos(ratio);
    const at: number[] = [];
    for (const side of [1, -1]) {
      for (let turns = -2; turns <= 2; turns++) {
        const theta = (side * psi + turns * 2 * Math.PI - crank.closedAngle) * crank.angleSign;
        if (theta > 0 && theta < crank.openAngle) at.push(theta);
      }
    }
    return at;
  };
  // Walking in short steps keeps the direction continuous across ±π.
  const unwrap = (thetas: number[], value: (theta: number) => number): TurnRange => {
    const stops = [...thetas, ...Array.from({ length: 17 }, (_, i) => (crank.openAngle * i) / 16)];
    stops.sort((a, b) => a - b);
    let previous = value(0);
    let from = previous;
    let to = previous;
    for (const theta of stops) {
      const raw = value(theta);
      previous = raw + 2 * Math.PI * Math.round((previous - raw) / (2 * Math.PI));
      from = Math.min(from, previous);
      to = Math.max(to, previous);
    }
    return { from, to, through: to - from };
  };
  return {
    postPin: unwrap(interesting(g / rho), direction),
    leafPin: unwrap(interesting(rho / g), (theta) => direction(theta) - sign * theta),
  };
}
