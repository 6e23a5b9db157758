/**
 * The two pins that a ram hangs between, and the travel of the leaf that carries one of them.
 *
 * Frame (rules G1, G2, G4): plan view from above, origin on the hinge axis, x ("along") on the closed
 * leaf toward its toe, y ("out" when fixed, "off" when it turns with the leaf) square to it on the
 * ram's side. Metres and radians, counter-clockwise positive.
 */

/** A point in plan [m]. Which frame it is in (fixed, or turning with the leaf) is said where it is used. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Where a ram is pinned. The post pin stands in the fixed frame, the leaf pin in the leaf's own axes. */
export interface Placement {
  /** Post pin, fixed frame [m]: `along` < 0 lies behind the hinge, `out` > 0 on the ram's side. */
  readonly postPin: { readonly along: number; readonly out: number };
  /** Leaf pin, leaf axes [m]: `along` from the hinge axis toward the toe, `off` square to the leaf. */
  readonly leafPin: { readonly along: number; readonly off: number };
  /** Height of the leaf pin above the post pin [m]; 0 when the ram hangs level. */
  readonly rise: number;
}

/** Which way the leaf opens, and how far. Rule G2: the turn φ is +θ toward the ram, −θ away from it. */
export interface Travel {
  readonly swing: "toward" | "away";
  /** Opening angle from closed [rad], 0 < angle < π. */
  readonly openAngle: number;
}

/**
 * +1 when the leaf opens toward the ram's side, −1 when away: φ = turnSign · θ.
 *
 * ### Example
 *   expect(turnSign({ swing: "away", openAngle: 1.5 })).toBe(-1);
 */
export function turnSign(travel: Travel): 1 | -1 {
  return travel.swing === "toward" ? 1 : -1;
}
