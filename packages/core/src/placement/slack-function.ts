import type { PinMoves } from "../clearance/gap-ceiling.ts";
import { slopeSize } from "../clearance/gap-slope.ts";

/** Pin coordinates in the order of every slope: post along, post out, leaf along, leaf off [m]. */
export type Pins = Float64Array;

/**
 * One limit as a smooth function of the four pin coordinates and the turn φ: ≥ 0 keeps it.
 *
 * Only the sign and the zero are the limit's own; `lever` and `deadCentre` are scaled so that a slack reads
 * about like metres. `slope` receives ∂/∂(along, out, d, e, φ).
 */
export interface SlackFunction {
  readonly id: string;
  /** The least over the travel is at one of its ends (rules G5, G6), so only those are looked at. */
  readonly endsOnly: boolean;
  /** Concave in each pin, so that the worst error is at a corner of the box of errors. */
  readonly bitesAtCorners: boolean;
  /** The same limit corner by corner: the slack is the least of theirs while the bodies are parted. */
  readonly corners: readonly SlackFunction[];
  evaluate(pins: Pins, cosPhi: number, sinPhi: number, slope: Float64Array): number;
  /**
   * How much the slack may exceed the tangent of the last evaluation when the pins move within `moves` [m].
   * May flatten `slope` (to zero) where no tangent can be promised.
   */
  excess(moves: PinMoves, slope: Float64Array): number;
}

/** Which side of the hinge the thrust line passes with the leaf closed; every limit is asked on that side. */
export function orientationOf(pins: Pins): 1 | -1 {
  return (pins[0] as number) * (pins[3] as number) - (pins[1] as number) * (pins[2] as number) >= 0 ? 1 : -1;
}

export const newSlope = (): Float64Array => new Float64Array(slopeSize);
