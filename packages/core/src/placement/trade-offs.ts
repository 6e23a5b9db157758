import { greatestLever, leastLever } from "../linkage/lever-arm.ts";
import { lengthRange } from "../linkage/pin-to-pin.ts";
import type { Placement } from "../linkage/pins.ts";
import type { Limit } from "./limit.ts";
import type { Situation } from "./situation.ts";

/** What one placement is better or worse at than another (rule G14). SI; null where a number is not known. */
export interface TradeOffs {
  /** Needs loads; not checked yet. */
  readonly forceMargin: number | null;
  readonly leastLever: number;
  /** Greatest speed of the toe over the travel at the ram's rod speed [m/s]. */
  readonly toeSpeed: number | null;
  /** Thrust at the toe where the lever arm is least [N]. */
  readonly thrustAtToe: number | null;
  /** Least clearance between ram body and leaf [m]. */
  readonly leafClearance: number | null;
  /** Time for the whole travel at the ram's rod speed [s]. */
  readonly openingTime: number | null;
  /** How far the rod is run out from fully in when the ram is hung (rule G17) [m]. */
  readonly runOut: number;
  /** How far post pin and leaf pin stand out from the closed leaf's line, the larger [m]. */
  readonly standsOut: number;
  /** Greatest over least lever arm: 1 would turn the leaf evenly. */
  readonly leverRatio: number;
}

/**
 * The leaf angle at which the ram is hung: open for a leaf that swings toward, closed for away (rule G17).
 *
 * ### Example
 *   expect(setUpAngle(workedExample.situation)).toBe(Math.PI / 2);
 */
export function setUpAngle(situation: Situation): number {
  const { travel } = situation.leaf;
  return travel.swing === "toward" ? travel.openAngle : 0;
}

/**
 * Trade-offs of a placement whose limits are known. Closed forms of rules G5 and G6.
 *
 * ### Example
 *   const { situation, roomy } = workedExample;
 *   const tradeOffs = tradeOffsOf(situation, roomy, limitsOf(situation, roomy));
 *   // The toe is fastest where the lever arm is least: 18 mm/s × 3600 mm ÷ arm.
 *   expect(tradeOffs.toeSpeed).toBeCloseTo((0.018 / tradeOffs.leastLever) * 3.6, 12);
 */
export function tradeOffsOf(situation: Situation, placement: Placement, limits: readonly Limit[]): TradeOffs {
  const { leaf, ram } = situation;
  const range = lengthRange(placement, leaf.travel);
  const least = leastLever(placement, leaf.travel).value;
  const moving = ram.speed !== null && range.monotonic && least > 0 ? ram.speed : null;
  return {
    forceMargin: limits.find((limit) => limit.id === "force")?.slack ?? null,
    leastLever: least,
    toeSpeed: moving === null ? null : (moving / least) * leaf.length,
    thrustAtToe: ram.thrust === null ? null : (ram.thrust * least) / leaf.length,
    leafClearance: limits.find((limit) => limit.id === "clearance.leaf")?.value ?? null,
    openingTime: moving === null ? null : (range.greatest - range.least) / moving,
    runOut: (leaf.travel.swing === "toward" ? range.open : range.closed) - ram.retracted,
    standsOut: Math.max(Math.abs(placement.postPin.out), Math.abs(placement.leafPin.off)),
    leverRatio: least > 0 ? greatestLever(placement, leaf.travel).value / least : Number.POSITIVE_INFINITY,
  };
}
